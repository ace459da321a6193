// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/picture.h"

#include <cstdint>
#include <optional>
#include <utility>

namespace tapward::document {
namespace {

using namespace std::string_view_literals;

std::uint32_t byteAt(std::string_view bytes, std::size_t at) { return static_cast<unsigned char>(bytes[at]); }

std::uint32_t bigEndian(std::string_view bytes, std::size_t at, int count)
{
    std::uint32_t value = 0;
    for (int i = 0; i < count; ++i) {
        value = value << 8 | byteAt(bytes, at + static_cast<std::size_t>(i));
    }
    return value;
}

using Size = std::pair<std::uint32_t, std::uint32_t>;

std::optional<Size> pngSize(std::string_view bytes)
{
    constexpr std::size_t kHeader = 8 + 4 + 4 + 8;  // signature, length, name, width and height
    if (bytes.size() < kHeader || bytes.substr(8, 8) != "\0\0\0\x0dIHDR"sv) {
        return std::nullopt;
    }
    return Size{bigEndian(bytes, 16, 4), bigEndian(bytes, 20, 4)};
}

/// Walks the segments up to the first frame header (SOF0..15 but for DHT, JPG, DAC).
std::optional<Size> jpegSize(std::string_view bytes)
{
    std::size_t at = 2;
    while (at + 4 <= bytes.size()) {
        if (byteAt(bytes, at) != 0xff) {
            return std::nullopt;
        }
        const std::uint32_t marker = byteAt(bytes, at + 1);
        if (marker == 0xff) {  // fill byte
            ++at;
            continue;
        }
        if (marker == 0xd8 || marker == 0x01 || (marker >= 0xd0 && marker <= 0xd7)) {  // no length follows
            at += 2;
            continue;
        }
        if (marker == 0xd9 || marker == 0xda) {  // end, or pixels before any frame header
            return std::nullopt;
        }
        const std::uint32_t length = bigEndian(bytes, at + 2, 2);
        const bool frame = marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
        if (frame) {
            if (length < 8 || at + 9 > bytes.size()) {
                return std::nullopt;
            }
            return Size{bigEndian(bytes, at + 7, 2), bigEndian(bytes, at + 5, 2)};
        }
        if (length < 2) {
            return std::nullopt;
        }
        at += 2 + length;
    }
    return std::nullopt;
}

}  // namespace

Result<PictureInfo> pictureInfo(std::string_view bytes)
{
    if (bytes.size() > kMostPictureBytes) {
        return problem({"The picture has {0} bytes; {1} are allowed.",
                        {static_cast<std::int64_t>(bytes.size()), static_cast<std::int64_t>(kMostPictureBytes)}},
                       "Save it smaller, or as JPEG.");
    }
    const bool png = bytes.starts_with("\x89PNG\r\n\x1a\n"sv);
    const bool jpeg = bytes.starts_with("\xff\xd8\xff"sv);
    if (!png && !jpeg) {
        return problem("This is neither a PNG nor a JPEG picture.", "Save the picture as PNG or JPEG first.");
    }
    const auto size = png ? pngSize(bytes) : jpegSize(bytes);
    if (!size || size->first == 0 || size->second == 0) {
        return problem("The picture is cut short or damaged.", "Save it again, or choose another one.");
    }
    const std::uint64_t pixels = std::uint64_t{size->first} * size->second;
    if (size->first > kMostPictureSide_px || size->second > kMostPictureSide_px || pixels > kMostPicturePixels) {
        return problem(
            {"The picture is {0} by {1} pixels; {2} on a side and {3} in all are allowed.",
             {static_cast<std::int64_t>(size->first), static_cast<std::int64_t>(size->second),
              static_cast<std::int64_t>(kMostPictureSide_px), static_cast<std::int64_t>(kMostPicturePixels)}},
            "Save it smaller.");
    }
    return PictureInfo{png ? PictureFormat::Png : PictureFormat::Jpeg, static_cast<int>(size->first),
                       static_cast<int>(size->second)};
}

}  // namespace tapward::document
