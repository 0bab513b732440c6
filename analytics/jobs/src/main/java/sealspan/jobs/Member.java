package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import sealspan.avro.TableCodec;
import sealspan.table.AssemblyRows;

/** The rows of an assembly on their way to the fit of a stratum. */
public final class Member {
  static final TypeInformation<Member> TYPE = Types.POJO(Member.class);

  /** The stratum. */
  public String stratum;

  /** The assembly. */
  public String assemblyId;

  /** Its rows, by {@link TableCodec}. */
  public byte[] rows;

  /** For Flink. */
  public Member() {}

  Member(String stratum, AssemblyRows rows) {
    this.stratum = stratum;
    this.assemblyId = rows.assemblyId();
    this.rows = TableCodec.encode(rows);
  }
}
