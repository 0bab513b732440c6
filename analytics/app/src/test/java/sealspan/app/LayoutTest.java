package sealspan.app;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Holds the layout that DEVELOPERS.md describes. */
@AnalyzeClasses(packages = "sealspan", importOptions = ImportOption.DoNotIncludeTests.class)
class LayoutTest {
  private static final String EVENT = "sealspan.event..";
  private static final String TABLE = "sealspan.table..";
  private static final String ASSEMBLY = "sealspan.assembly..";
  private static final String AVRO = "sealspan.avro..";
  private static final String VALIDATE = "sealspan.ingest.validate..";
  private static final String SOURCE = "sealspan.ingest.source..";
  private static final String LOG = "sealspan.ingest.log..";
  private static final String ARCHIVE = "sealspan.ingest.archive..";
  private static final String STATS = "sealspan.stats..";
  private static final String STUDY = "sealspan.study..";
  private static final String JOBS = "sealspan.jobs..";
  private static final String ANSWERS = "sealspan.answers..";
  private static final String APP = "sealspan.app..";

  @ArchTest static final ArchRule EVENTS_NEED_ONLY_JAVA = onlyNeeds(EVENT, "java..", EVENT);

  @ArchTest
  static final ArchRule TABLES_NEED_ONLY_EVENTS = onlyNeeds(TABLE, "java..", EVENT, TABLE);

  @ArchTest
  static final ArchRule ASSEMBLIES_NEED_ONLY_EVENTS = onlyNeedsOfOurs(ASSEMBLY, EVENT, ASSEMBLY);

  @ArchTest static final ArchRule CODEC = onlyNeedsOfOurs(AVRO, EVENT, TABLE, AVRO);

  @ArchTest
  static final ArchRule STATISTICS_KNOW_NOTHING_OF_US_AND_OF_NO_RUNTIME =
      onlyNeedsOfOurs(STATS, STATS);

  @ArchTest
  static final ArchRule VALIDATION = onlyNeedsOfOurs(VALIDATE, EVENT, ASSEMBLY, TABLE, VALIDATE);

  @ArchTest
  static final ArchRule STUDIES =
      onlyNeedsOfOurs(STUDY, EVENT, ASSEMBLY, TABLE, AVRO, STATS, STUDY);

  @ArchTest
  static final ArchRule THE_LOG = onlyNeedsOfOurs(LOG, EVENT, ASSEMBLY, TABLE, AVRO, VALIDATE, LOG);

  @ArchTest
  static final ArchRule SOURCES =
      onlyNeedsOfOurs(SOURCE, EVENT, ASSEMBLY, TABLE, AVRO, VALIDATE, LOG, SOURCE);

  @ArchTest static final ArchRule ARCHIVES = onlyNeedsOfOurs(ARCHIVE, EVENT, AVRO, LOG, ARCHIVE);

  @ArchTest
  static final ArchRule JOBS_ALONE =
      onlyNeedsOfOurs(JOBS, EVENT, ASSEMBLY, TABLE, AVRO, STUDY, JOBS);

  @ArchTest
  static final ArchRule ANSWERS_ALONE =
      onlyNeedsOfOurs(ANSWERS, EVENT, ASSEMBLY, TABLE, AVRO, STUDY, ANSWERS);

  @ArchTest
  static final ArchRule ESTIMATORS_ARE_CALLED_FROM_STUDIES_ONLY =
      noClasses()
          .that()
          .resideOutsideOfPackages(STATS, STUDY, APP)
          .should()
          .dependOnClassesThat()
          .resideInAPackage(STATS);

  @ArchTest static final ArchRule FLINK_IN_JOBS_ONLY = usedOnlyIn("org.apache.flink..", JOBS);

  @ArchTest static final ArchRule DUCKDB_IN_ANSWERS_ONLY = usedOnlyIn("org.duckdb..", ANSWERS);

  @ArchTest static final ArchRule SQL_IN_ANSWERS_ONLY = usedOnlyIn("java.sql..", ANSWERS);

  @ArchTest
  static final ArchRule KAFKA_WHERE_THE_LOG_IS_READ_AND_WRITTEN =
      usedOnlyIn("org.apache.kafka..", LOG, JOBS, ANSWERS);

  @ArchTest
  static final ArchRule AVRO_IN_THE_CODEC_ONLY = usedOnlyIn("org.apache.avro..", AVRO, ANSWERS);

  @ArchTest static final ArchRule COMMANDS_IN_THE_PROGRAM_ONLY = usedOnlyIn("picocli..", APP);

  @ArchTest
  static final ArchRule NO_PACKAGE_THAT_SAYS_NOTHING =
      noClasses()
          .should()
          .resideInAnyPackage("..util..", "..utils..", "..common..", "..core..", "..helper..");

  @ArchTest
  static final ArchRule NO_NAME_THAT_SAYS_NOTHING =
      noClasses().should().haveNameMatching(".*(Manager|Service|Impl|Utils?|Helpers?)(\\$.*)?");

  private static ArchRule onlyNeeds(String part, String... allowed) {
    return com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes()
        .that()
        .resideInAPackage(part)
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(allowed);
  }

  private static ArchRule onlyNeedsOfOurs(String part, String... allowed) {
    return noClasses()
        .that()
        .resideInAPackage(part)
        .should()
        .dependOnClassesThat(oursOutside(allowed));
  }

  private static ArchRule usedOnlyIn(String library, String... places) {
    return noClasses()
        .that()
        .resideOutsideOfPackages(places)
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library);
  }

  private static DescribedPredicate<JavaClass> oursOutside(String... allowed) {
    return JavaClass.Predicates.resideInAPackage("sealspan..")
        .and(DescribedPredicate.not(JavaClass.Predicates.resideInAnyPackage(allowed)))
        .as("are ours, outside of %s", String.join(", ", allowed));
  }
}
