#include "mobile/models/run_words.h"

#include <QCoreApplication>
#include <QLocale>

namespace kneerail {

class RunWords {
  Q_DECLARE_TR_FUNCTIONS(RunWords)
};

QString metres_words(std::int64_t mm) {
  return RunWords::tr("%1 m").arg(QLocale().toString(static_cast<double>(mm) / 1000, 'f', 2));
}

QString tube_words(std::int64_t diameter_tenth_mm, std::int64_t wall_tenth_mm) {
  const auto tenths = [](std::int64_t value) {
    return QLocale().toString(static_cast<double>(value) / 10, 'f', 1);
  };
  return RunWords::tr("%1 × %2 mm").arg(tenths(diameter_tenth_mm), tenths(wall_tenth_mm));
}

QString system_words(const layout::Made& made) {
  const bool welded = made.system == System::welded;
  switch (made.material) {
    case Material::aluminium:
      return welded ? RunWords::tr("welded, aluminium") : RunWords::tr("slip-on, aluminium");
    case Material::stainless_steel:
      return welded ? RunWords::tr("welded, stainless") : RunWords::tr("slip-on, stainless");
    default:
      return welded ? RunWords::tr("welded, steel") : RunWords::tr("slip-on, steel");
  }
}

QString protection_words(const layout::Made& made) {
  switch (made.protection) {
    case Protection::hot_dip_zinc:
      return RunWords::tr("hot-dip zinc");
    case Protection::zinc_plus_paint:
      return RunWords::tr("zinc plus paint");
    case Protection::paint_on_steel:
      return RunWords::tr("paint on steel");
    case Protection::anodised:
      return RunWords::tr("anodised");
    default:
      return RunWords::tr("bare");
  }
}

QString base_words(BaseKind base) {
  switch (base) {
    case BaseKind::base_flange:
      return RunWords::tr("base flange");
    case BaseKind::wall_flange:
      return RunWords::tr("wall flange");
    case BaseKind::welded_plate:
      return RunWords::tr("welded plate");
    case BaseKind::cast_in:
      return RunWords::tr("cast in");
    default:
      return RunWords::tr("socket");
  }
}

QString fitting_words(WhatItDoes does) {
  switch (does) {
    case WhatItDoes::three_way_tee:
      return RunWords::tr("three-way tee");
    case WhatItDoes::corner_tee:
      return RunWords::tr("corner tee");
    case WhatItDoes::cross:
      return RunWords::tr("cross");
    case WhatItDoes::elbow:
      return RunWords::tr("elbow");
    case WhatItDoes::adjustable_swivel:
      return RunWords::tr("adjustable swivel");
    default:
      return RunWords::tr("end cap");
  }
}

QString bay_words(BayKind kind) {
  switch (kind) {
    case BayKind::rails:
      return RunWords::tr("rails");
    case BayKind::mesh_infill:
      return RunWords::tr("mesh infill");
    case BayKind::gate:
      return RunWords::tr("a gate");
    default:
      return RunWords::tr("open gap");
  }
}

QString behind_words(WhoIsBehind who) {
  switch (who) {
    case WhoIsBehind::walkers:
      return RunWords::tr("walkers");
    case WhoIsBehind::children:
      return RunWords::tr("children");
    case WhoIsBehind::crowd:
      return RunWords::tr("a crowd");
    case WhoIsBehind::staff:
      return RunWords::tr("staff");
    default:
      return RunWords::tr("cyclists");
  }
}

QString below_words(WhatIsBelow what) {
  switch (what) {
    case WhatIsBelow::ground:
      return RunWords::tr("ground");
    case WhatIsBelow::water:
      return RunWords::tr("water");
    case WhatIsBelow::road:
      return RunWords::tr("a road");
    default:
      return RunWords::tr("machinery");
  }
}

}  // namespace kneerail
