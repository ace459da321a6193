// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "base/result.h"

namespace tapward::document {

/// Bounds on a picture kept in a drawing; a program must not decode what is beyond them.
inline constexpr std::size_t kMostPictureBytes = 3u << 19;
inline constexpr int kMostPictureSide_px = 6000;
inline constexpr long kMostPicturePixels = 16'000'000;
/// Of all pictures of a drawing together: seven photographs of the size a floor plan is kept in.
inline constexpr long kMostPicturesPixels = 48'000'000;

enum class PictureFormat { Png, Jpeg };
struct PictureInfo {
    PictureFormat format = PictureFormat::Png;
    int width_px = 0;
    int height_px = 0;
    long pixels() const { return long{width_px} * height_px; }
};

/// What a picture's own header says, without decoding it: PNG (ISO/IEC 15948, IHDR first) or JPEG (ISO/IEC
/// 10918-1, first frame header). Errors: another format, a header cut short, a size beyond the bounds.
Result<PictureInfo> pictureInfo(std::string_view bytes);

}  // namespace tapward::document
