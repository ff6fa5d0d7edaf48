#include "mobile/models/finding_words.h"

#include <QCoreApplication>
#include <QLocale>

#include "mobile/models/finding_pen.h"
#include "mobile/models/part_words.h"

namespace kneerail {

namespace {

class FindingWords {
  Q_DECLARE_TR_FUNCTIONS(FindingWords)
};

}  // namespace

QString finding_name(FindingKind what) {
  const QString word = finding_word(what);
  return word.isEmpty() ? FindingWords::tr("other") : word;
}

QString measure_name(Measure measure) {
  switch (measure) {
    case Measure::closed_off:
      return FindingWords::tr("closed off");
    case Measure::propped:
      return FindingWords::tr("propped");
    case Measure::taped:
      return FindingWords::tr("taped");
    case Measure::struck:
      return FindingWords::tr("struck");
    case Measure::reported:
      return FindingWords::tr("reported");
    case Measure::guarded:
      return FindingWords::tr("guarded");
    case Measure::closed_below:
      return FindingWords::tr("closed below");
  }
  return {};
}

QString next_step_name(NextStepKind step) {
  switch (step) {
    case NextStepKind::watch:
      return FindingWords::tr("watch");
    case NextStepKind::measure_next_visit:
      return FindingWords::tr("measure next visit");
    case NextStepKind::mend:
      return FindingWords::tr("mend");
    case NextStepKind::order:
      return FindingWords::tr("order");
    case NextStepKind::ask_an_engineer:
      return FindingWords::tr("ask an engineer");
  }
  return {};
}

QString ended_name(HowEnded how) {
  switch (how) {
    case HowEnded::repaired:
      return FindingWords::tr("repaired");
    case HowEnded::replaced:
      return FindingWords::tr("replaced");
    case HowEnded::reassessed:
      return FindingWords::tr("re-assessed");
    case HowEnded::raised_by_mistake:
      return FindingWords::tr("raised by mistake");
  }
  return {};
}

QString ended_on_name(EndedOn on) {
  switch (on) {
    case EndedOn::seen_and_pushed:
      return FindingWords::tr("pushed and looked after the work");
    case EndedOn::seen:
      return FindingWords::tr("looked");
    case EndedOn::papers_only:
      return FindingWords::tr("papers only");
  }
  return {};
}

QString work_name(WorkAction work) {
  switch (work) {
    case WorkAction::retorque:
      return FindingWords::tr("re-torqued");
    case WorkAction::touch_up:
      return FindingWords::tr("touched up");
    case WorkAction::replace:
      return FindingWords::tr("replaced");
    case WorkAction::cut_out_and_weld_in:
      return FindingWords::tr("cut out and welded in");
    case WorkAction::regalvanise:
      return FindingWords::tr("re-galvanised");
    case WorkAction::repaint:
      return FindingWords::tr("repainted");
    case WorkAction::clean:
      return FindingWords::tr("cleaned");
    case WorkAction::refix_base:
      return FindingWords::tr("base re-fixed");
    case WorkAction::other:
      return FindingWords::tr("mended");
  }
  return {};
}

QString put_off_name(WhyPutOff why) {
  switch (why) {
    case WhyPutOff::money:
      return FindingWords::tr("money");
    case WhyPutOff::part:
      return FindingWords::tr("part");
    case WhyPutOff::access:
      return FindingWords::tr("access");
    case WhyPutOff::weather:
      return FindingWords::tr("weather");
    case WhyPutOff::engineer:
      return FindingWords::tr("engineer");
    case WhyPutOff::other:
      return FindingWords::tr("other");
  }
  return {};
}

QString closure_name(HowItStands how) {
  switch (how) {
    case HowItStands::in_place:
      return FindingWords::tr("in place");
    case HowItStands::put_back:
      return FindingWords::tr("put back");
    case HowItStands::gone:
      return FindingWords::tr("gone");
    case HowItStands::not_seen:
      return FindingWords::tr("not seen");
  }
  return {};
}

QString nobody_told(const QString& which, std::int64_t minutes) {
  constexpr std::int64_t hour = 60;
  if (minutes < 1) return FindingWords::tr("%1: nobody told").arg(which);
  if (minutes < 2 * hour)
    return FindingWords::tr("%1: nobody told, %2 min").arg(which).arg(minutes);
  if (minutes < 48 * hour)
    return FindingWords::tr("%1: nobody told, %2 h %3 min")
        .arg(which)
        .arg(minutes / hour)
        .arg(minutes % hour);
  return FindingWords::tr("%1: nobody told, %n day(s)", nullptr,
                          static_cast<int>(minutes / (24 * hour)))
      .arg(which);
}

QString told_words(const std::vector<Telling>& told, const WalkPen& pen) {
  QStringList all;
  for (const Telling& one : told)
    all << FindingWords::tr("%1 %2").arg(
        QString::fromStdString(one.whom),
        pen.local(one.at).time().toString(QStringLiteral("HH:mm")));
  return all.isEmpty() ? QString()
                       : FindingWords::tr("told %1").arg(all.join(FindingWords::tr(", ")));
}

}  // namespace kneerail

QString FindingPen::title() const {
  if (!about_) return {};
  return number_ > 0 ? tr("F-%1 · %2").arg(number_).arg(about_->words) : about_->words;
}

QString FindingPen::writer() const {
  const auto* person = pen_.person();
  return person == nullptr ? QString() : QString::fromStdString(person->initials);
}

QString FindingPen::safe_words() const {
  if (!cannot_wait()) return {};
  if (!said_.why_it_can_wait.isEmpty()) return tr("It can wait: %1").arg(said_.why_it_can_wait);
  if (said_.measures.empty()) return tr("Not made safe");
  const QString at = pen_.local(*said_.safe_at).time().toString(QStringLiteral("HH:mm"));
  if (!safe()) {
    QStringList words;
    for (const kneerail::Measure measure : said_.measures) words << kneerail::measure_name(measure);
    return tr("Not made safe: %1 %2").arg(words.join(tr(", ")), at);
  }
  return did(kneerail::Measure::closed_off)
             ? tr("Made safe %1. The bay stays closed on every drawing").arg(at)
             : tr("Made safe %1").arg(at);
}

QString FindingPen::look_again_words() const {
  if (said_.measures.empty()) return {};
  const auto by = made_safe(said_).look_again_by;
  if (!by) return {};
  const QDateTime local = pen_.local(*by);
  return tr("look again by %1 %2")
      .arg(QLocale().toString(local.date(), tr("d MMM")),
           local.time().toString(QStringLiteral("HH:mm")));
}
