#pragma once

// Draws what the demo's inspectors photograph, and codes it as JPEG without metadata.

#include "mobile/demo/photographs.h"

namespace kneerail::photograph {

/// 800 by 600 pixels. The same scene gives the same bytes.
demo::DrawnPhotograph drawn(const demo::PhotoScene& scene);

}  // namespace kneerail::photograph
