#pragma once

// A picture file made ready for the register: upright, without what the camera wrote beside it, and
// with a small preview. One that already is upright keeps its picture byte for byte.

#include <QDateTime>
#include <QString>

#include "core/base/result.h"
#include "core/records/cbor.h"
#include "core/records/photograph.h"

namespace kneerail {

struct PreparedPicture {
  cbor::Bytes bytes;
  MediaType media_type = MediaType::jpeg;
  int width_pixels = 1;
  int height_pixels = 1;
  cbor::Bytes preview;        ///< 320 pixels wide, or the picture itself where that is smaller
  QDateTime taken;            ///< by the camera's clock, without a zone; invalid: not said
  int megapixels_before = 0;  ///< of a picture that was made smaller; 0: it was not
};

/// Works for a second or so: not for the screens' thread. Of a picture over 50 megapixels only a
/// smaller one is kept. Errors: io (the file cannot be read), corrupt (no whole picture),
/// invalid_input (of no kind that is kept, or too large).
Result<PreparedPicture> prepare_picture(const QString& path);

}  // namespace kneerail
