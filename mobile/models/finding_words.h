#pragma once

// What findings and what holds people back from them are called on the screen.

#include <QString>
#include <cstdint>
#include <vector>

#include "core/records/finding.h"
#include "core/records/made_safe.h"
#include "core/records/work.h"
#include "mobile/models/walk_pen.h"
#include "schema/store/finding_store.h"

namespace kneerail {

/// "split"; what has no word of its own is "other".
QString finding_name(FindingKind what);
/// "closed off".
QString measure_name(Measure measure);
/// "measure next visit".
QString next_step_name(NextStepKind step);
/// "repaired".
QString ended_name(HowEnded how);
/// "pushed and looked after the work".
QString ended_on_name(EndedOn on);
/// "re-torqued".
QString work_name(WorkAction work);
/// "part": why a mending was put off.
QString put_off_name(WhyPutOff why);
/// "put back".
QString closure_name(HowItStands how);

/// "F-3: nobody told, 40 min".
QString nobody_told(const QString& which, std::int64_t minutes);
/// "told RH 10:55, harbour office 11:02"; empty: nobody.
QString told_words(const std::vector<Telling>& told, const WalkPen& pen);

}  // namespace kneerail
