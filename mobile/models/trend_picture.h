#pragma once

// One part's coating along the years, in the numbers and words that a drawing needs: years of the
// calendar across (2031.37), micrometres up.

#include <QList>
#include <QString>
#include <functional>

#include "core/forecast/part_story.h"

namespace kneerail {

struct TrendPicture {
  /// One visit's readings.
  struct Dots {
    double year = 0;
    QList<double> values;
    bool put_right = false;  ///< the gauge was off: drawn hollow, where they were put
    bool current = false;    ///< of the coating that is there now
  };
  struct Point {
    double year = 0;
    double low = 0;
    double middle = 0;
    double high = 0;
  };
  struct Life {
    QList<Point> path;
    bool current = false;
    double start = 0;
    QString begun;  ///< "touched up May 2027"; empty where nothing is marked
  };
  struct Limit {
    double value = 0;
    QString label;
    bool last = false;     ///< the coating is gone there
    bool crossed = false;  ///< the next three are known
    double low = 0;
    double middle = 0;
    double high = 0;
  };
  /// A time in which a gauge was off.
  struct Drift {
    double from = 0;
    double to = 0;
    QString words;
  };

  double from = 0;  ///< of the axis
  double to = 0;
  double top = 0;
  double now = 0;
  QList<Dots> dots;
  QList<Life> lives;
  QList<Limit> limits;
  QList<Drift> drifts;
};

/// 14 May 2031 as 2031.37.
double calendar_year(Date day);

/// `gauge(name)` turns what the portfolio calls an instrument into what people call it.
TrendPicture trend_picture(const forecast::PartStory& story,
                           const std::function<QString(const std::string&)>& gauge);

}  // namespace kneerail
