// The library kneerail_sound: plays tones on the machine's loudspeaker. Loaded by the program where
// it is there; it alone needs QtMultimedia. All is called on one thread, which runs events.

#include <QAudioFormat>
#include <QAudioSink>
#include <QBuffer>
#include <QMediaDevices>
#include <memory>

#include "mobile/feel/tones.h"

namespace {

struct Sound {
  explicit Sound(const QAudioFormat& format) : sink(format) {}
  QBuffer bytes;  // goes after the sink that reads it
  QAudioSink sink;
};

std::unique_ptr<Sound>& sound() {
  static std::unique_ptr<Sound> one;
  return one;
}

}  // namespace

/// False: there is no loudspeaker that plays such tones.
extern "C" Q_DECL_EXPORT bool kneerail_sound_open() {
  QAudioFormat format;
  format.setSampleRate(kneerail::feel::samples_per_second);
  format.setChannelCount(1);
  format.setSampleFormat(QAudioFormat::Int16);
  const QAudioDevice speaker = QMediaDevices::defaultAudioOutput();
  if (speaker.isNull() || !speaker.isFormatSupported(format)) return false;
  sound() = std::make_unique<Sound>(format);
  return true;
}

/// The tone before it is cut off.
extern "C" Q_DECL_EXPORT void kneerail_sound_play(const std::int16_t* samples, int count) {
  if (!sound() || count <= 0) return;
  sound()->sink.stop();
  sound()->bytes.close();
  sound()->bytes.setData(reinterpret_cast<const char*>(samples),
                         count * static_cast<int>(sizeof(*samples)));
  sound()->bytes.open(QIODevice::ReadOnly);
  sound()->sink.start(&sound()->bytes);
}

extern "C" Q_DECL_EXPORT void kneerail_sound_close() {
  sound().reset();
}
