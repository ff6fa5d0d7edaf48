#pragma once

// What is left until each limit of a part, row for row, and what its limits say together.

#include <QList>
#include <QString>

#include "mobile/models/reckoning.h"
#include "mobile/models/time_left_model.h"

namespace kneerail {

/// One row a limit, in the order in which they usually come. Times where there are times; a chance
/// at a day where only that can be said; why not, where nothing can.
QList<TimeLeftModel::Row> limit_rows(const PartTold& told, Date as_of);

/// When the part comes due, what to look at, what leans on the usual; the last sentence says that
/// it is an estimate.
QString limits_reason(const PartTold& told, Date as_of);

}  // namespace kneerail
