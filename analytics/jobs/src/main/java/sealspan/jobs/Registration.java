package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;

/** That the history of an assembly needs the events of another subject. */
public final class Registration {
  static final TypeInformation<Registration> TYPE = Types.POJO(Registration.class);

  /** Key of the site, gauge or tester. */
  public String reference;

  /** Key of the assembly. */
  public String assembly;

  /** For Flink. */
  public Registration() {}

  Registration(String reference, String assembly) {
    this.reference = reference;
    this.assembly = assembly;
  }
}
