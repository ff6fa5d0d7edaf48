#pragma once

// What the register's codes are called on the screen.

#include <QString>

#include "core/layout/run_rule.h"

namespace kneerail {

QString metres_words(std::int64_t mm);  ///< "1.50 m"
QString tube_words(std::int64_t diameter_tenth_mm,
                   std::int64_t wall_tenth_mm);      ///< "48.3 × 3.2 mm"
QString system_words(const layout::Made& made);      ///< "slip-on, steel"
QString protection_words(const layout::Made& made);  ///< "hot-dip zinc"
QString base_words(BaseKind base);
QString fitting_words(WhatItDoes does);
QString bay_words(BayKind kind);
QString behind_words(WhoIsBehind who);
QString below_words(WhatIsBelow what);

}  // namespace kneerail
