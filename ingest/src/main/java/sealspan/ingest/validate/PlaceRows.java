package sealspan.ingest.validate;

import java.time.LocalDate;
import sealspan.event.AssemblyChanged;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.Moment;
import sealspan.event.SiteDescribed;
import sealspan.ingest.validate.Problem.Fault;

/** Sites, installations and their changes from rows. */
final class PlaceRows {
  static final Column SITE_ID = Columns.named("site_id");
  static final Column POSITION_ID = Columns.named("position_id");
  private static final Column PREMISES = Columns.named("premises");
  private static final Column METER_ID = Columns.named("meter_id");
  private static final Column ACCOUNT_ID = Columns.named("account_id");
  private static final Column OWNER_ID = Columns.named("owner_id");
  private static final Column LATITUDE = Columns.named("latitude");
  private static final Column LONGITUDE = Columns.named("longitude");
  private static final Column ELEVATION = Columns.named("elevation_m");
  private static final Column ZONE_ID = Columns.named("zone_id");
  private static final Column JURISDICTION = Columns.named("jurisdiction");
  private static final Column HAZARD = Columns.named("hazard");
  private static final Column PROTECTION = Columns.named("protection");
  private static final Column USE = Columns.named("use");
  private static final Column ACCESS = Columns.named("access");
  private static final Column VAULT = Columns.named("vault");
  private static final Column TYPE = Columns.named("type");
  private static final Column MAKER = Columns.named("maker");
  private static final Column MODEL = Columns.named("model");
  private static final Column SERIAL = Columns.named("serial");
  private static final Column BYPASS_SERIAL = Columns.named("bypass_serial");
  private static final Column SIZE = Columns.named("size");
  private static final Column ORIENTATION = Columns.named("orientation");
  private static final Column MANUFACTURED_ON = Columns.named("manufactured_on");
  private static final Column INSTALL_DATE = Columns.named("install_date");
  private static final Column KNOWN_SINCE = Columns.named("known_since");
  private static final Column IN_SERVICE_SINCE = Columns.named("in_service_since");
  private static final Column APPROVED = Columns.named("approved");
  private static final Column REPLACES = Columns.named("replaces_assembly_id");
  private static final Column PARENT = Columns.named("parent_assembly_id");
  private static final Column PARALLEL = Columns.named("parallel_installation_id");
  private static final Column MAINLINES = Columns.named("mainline_count");
  private static final Column SITE_CHANGE = Columns.named("site_change");
  private static final Column REMARKS = Columns.named("remarks");

  private PlaceRows() {}

  /** A description of a site; null, with a problem, where latitude and longitude do not pair. */
  static SiteDescribed site(Fields row, String siteId, String positionId, Moment when) {
    if (row.has(LATITUDE) != row.has(LONGITUDE)) {
      row.add(
          row.has(LATITUDE) ? LONGITUDE : LATITUDE,
          Fault.MISSING,
          "It is empty, and a place needs both latitude and longitude.",
          "Fill in both or neither.");
    }
    return new SiteDescribed(
        siteId,
        when,
        positionId,
        row.text(PREMISES),
        row.text(METER_ID),
        row.text(ACCOUNT_ID),
        row.text(OWNER_ID),
        row.decimal(LATITUDE, -90, 90),
        row.decimal(LONGITUDE, -180, 180),
        row.decimal(ELEVATION, -500, 9000),
        row.text(ZONE_ID),
        row.text(JURISDICTION),
        row.timeZone(),
        row.code(HAZARD, Codes.HAZARD),
        row.code(PROTECTION, Codes.PROTECTION),
        row.code(USE, Codes.USE),
        row.text(ACCESS),
        row.yesNo(VAULT));
  }

  /**
   * An installation.
   *
   * @param otherwise since when it is known to stand there where neither day of installation nor
   *     such a day is told
   */
  static AssemblyInstalled installed(
      Fields row, String assemblyId, String siteId, String positionId, LocalDate otherwise) {
    LocalDate installed = row.pastDay(INSTALL_DATE);
    LocalDate known = row.pastDay(KNOWN_SINCE);
    LocalDate day = installed != null ? installed : known != null ? known : otherwise;
    LocalDate made = row.pastDay(MANUFACTURED_ON);
    if (made != null && installed != null && made.isAfter(installed)) {
      row.add(
          MANUFACTURED_ON,
          Fault.CONTRADICTION,
          "The assembly was made on " + made + ", after it was installed on " + installed + ".",
          "Check both days.");
    }
    return new AssemblyInstalled(
        assemblyId,
        day == null ? null : new Moment(day, null, row.timeZone()),
        installed != null ? DayMeaning.INSTALLED : DayMeaning.RECORD_BEGINS,
        siteId,
        positionId,
        row.text(REPLACES),
        row.text(PARENT),
        row.text(PARALLEL),
        row.whole(MAINLINES, 1, 9),
        row.code(TYPE, Codes.TYPE),
        row.text(MAKER),
        row.text(MODEL),
        row.text(SERIAL),
        row.text(BYPASS_SERIAL),
        sizeInch(row),
        row.text(ORIENTATION),
        made,
        row.pastDay(IN_SERVICE_SINCE),
        row.yesNo(APPROVED));
  }

  private static String sizeInch(Fields row) {
    String text = row.text(SIZE);
    if (text == null) {
      return null;
    }
    String size = Sizes.inch(text, row.draft().notation().decimalMark());
    if (size == null) {
      row.add(
          SIZE,
          Fault.NOT_A_NUMBER,
          Fields.quoted(text) + " is not a nominal size in inches.",
          "Write such as 0.75, 3/4, 1 1/2 or 2; a size in millimetres as 20 mm.");
    }
    return size;
  }

  /** A change of an assembly. */
  static AssemblyChanged changed(Fields row, String assemblyId, Moment when) {
    return new AssemblyChanged(
        assemblyId,
        when,
        row.text(POSITION_ID),
        row.text(ZONE_ID),
        row.code(HAZARD, Codes.HAZARD),
        row.code(USE, Codes.USE),
        row.text(OWNER_ID),
        row.text(ORIENTATION),
        row.text(SITE_CHANGE),
        row.text(REMARKS));
  }
}
