#pragma once

// What a picture file says beside its picture: JPEG (ITU-T T.81, EXIF 2.32) and PNG (RFC 2083 and
// its third edition). It is read once for how the camera was held and when, and then left out:
// place, device, names, comments and the small pictures kept with them never come into the
// register.

#include <optional>
#include <span>
#include <string>

#include "core/base/result.h"
#include "core/records/cbor.h"

namespace kneerail {

/// What the camera wrote of the moment, "2031:05:14 10:51:07"; nothing where it wrote none that can
/// be read. `bytes`: a JPEG file.
std::optional<std::string> moment_in_jpeg(std::span<const std::uint8_t> bytes);

/// The same picture, byte for byte what is drawn, without anything else; what follows its end is
/// cut off. Errors: corrupt, when it does not go on to its end.
Result<cbor::Bytes> jpeg_without_metadata(std::span<const std::uint8_t> bytes);
Result<cbor::Bytes> png_without_metadata(std::span<const std::uint8_t> bytes);

}  // namespace kneerail
