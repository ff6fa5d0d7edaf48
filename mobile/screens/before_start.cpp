#include "mobile/screens/before_start.h"

#include <QGuiApplication>
#include <QOpenGLContext>
#include <QQuickWindow>
#include <cstdlib>

#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace kneerail {

namespace {

/// Each thread of its own would keep up to 64 MB of what it ever used, and a screen's pictures and
/// pages come and go on many. Until the first frame is drawn what is freed is kept to be used
/// again: every page that comes anew from the machine costs its clearing. Without glibc nothing
/// happens.
void share_heaps() {
#ifdef __GLIBC__
  constexpr int shared_heaps = 2;
  constexpr int kept_bytes = 32 * 1024 * 1024;
  mallopt(M_ARENA_MAX, shared_heaps);
  mallopt(M_MMAP_THRESHOLD, kept_bytes);
  mallopt(M_TRIM_THRESHOLD, kept_bytes);
#endif
}

void set_where_unset(const char* name, const char* value) {
  if (qEnvironmentVariableIsEmpty(name)) qputenv(name, value);
}

/// Of the texture that keys, signs and labels share. As large as the window, which is Qt's choice,
/// it would be 8 MB, most of it empty.
void share_a_small_texture() {
  set_where_unset("QSG_ATLAS_WIDTH", "1024");
  set_where_unset("QSG_ATLAS_HEIGHT", "512");
}

}  // namespace

void before_start() {
  share_heaps();
  share_a_small_texture();
  // Letters are drawn at one size and never turned: their pictures are quicker than their outlines.
  QQuickWindow::setTextRenderType(QQuickWindow::NativeTextRendering);
}

void give_memory_back() {
#ifdef __GLIBC__
  constexpr int own_mapping_bytes = 128 * 1024;  // larger pieces go back as soon as they are freed
  mallopt(M_MMAP_THRESHOLD, own_mapping_bytes);
  mallopt(M_TRIM_THRESHOLD, own_mapping_bytes);
  malloc_trim(0);
#endif
}

std::future<void> load_graphics() {
  if (QGuiApplication::platformName() != QLatin1String("xcb")) return {};
  return std::async(std::launch::async, [] { QOpenGLContext::supportsThreadedOpenGL(); });
}

}  // namespace kneerail
