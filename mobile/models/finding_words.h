#pragma once

// What findings and what holds people back from them are called on the screen.

#include <QString>

#include "core/records/finding.h"
#include "core/records/made_safe.h"

namespace kneerail {

/// "split"; what has no word of its own is "other".
QString finding_name(FindingKind what);
/// "closed off".
QString measure_name(Measure measure);
/// "measure next visit".
QString next_step_name(NextStepKind step);
/// "repaired".
QString ended_name(HowEnded how);
/// "put back".
QString closure_name(HowItStands how);

}  // namespace kneerail
