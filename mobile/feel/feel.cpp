#include "mobile/feel/feel.h"

#include <optional>
#include <utility>

#include "mobile/feel/tones.h"

namespace kneerail::feel {

namespace {

std::optional<Event> event_named(const QString& what) {
  constexpr std::pair<const char*, Event> names[] = {{"kept", Event::kept},
                                                     {"partDone", Event::part_done},
                                                     {"postDone", Event::post_done},
                                                     {"cannotWait", Event::cannot_wait},
                                                     {"far", Event::far},
                                                     {"notKept", Event::not_kept},
                                                     {"undone", Event::undone}};
  for (const auto& [name, event] : names)
    if (what == QLatin1String(name)) return event;
  return std::nullopt;
}

}  // namespace

Feel::Feel(std::unique_ptr<Device> device, const Tokens& tokens, QObject* parent)
    : QObject(parent), device_(std::move(device)), tokens_(tokens) {}

void Feel::felt(const QString& what) {
  const auto event = event_named(what);
  if (!event) return;
  device_->shake(pulses_ms(*event));
  const auto sound = tone(*event);
  if (!sound.empty() && tokens_.sounds()) device_->play(sound);
}

}  // namespace kneerail::feel
