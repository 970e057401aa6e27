package passband.compile;

import passband.model.ExtraSetting;
import passband.plan.Owner;

/** A setting and whose it is. */
record OwnSetting(Owner owner, ExtraSetting setting) {}
