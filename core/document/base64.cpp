// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/base64.h"

#include <array>
#include <cstdint>

namespace tapward::document {
namespace {

constexpr std::string_view kLetters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
constexpr std::uint8_t kNone = 64;

constexpr std::array<std::uint8_t, 256> makeValues()
{
    std::array<std::uint8_t, 256> values{};
    values.fill(kNone);
    for (std::size_t i = 0; i < kLetters.size(); ++i) {
        values[static_cast<unsigned char>(kLetters[i])] = static_cast<std::uint8_t>(i);
    }
    return values;
}
constexpr std::array<std::uint8_t, 256> kValues = makeValues();

std::uint32_t byteOrZero(std::string_view bytes, std::size_t i)
{
    return i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0;
}

}  // namespace

std::string toBase64(std::string_view bytes)
{
    std::string text;
    text.reserve((bytes.size() + 2) / 3 * 4);
    for (std::size_t i = 0; i < bytes.size(); i += 3) {
        const std::uint32_t group =
            byteOrZero(bytes, i) << 16 | byteOrZero(bytes, i + 1) << 8 | byteOrZero(bytes, i + 2);
        for (std::size_t k = 0; k < 4; ++k) {
            text += i + k <= bytes.size() ? kLetters[group >> (18 - 6 * k) & 63] : '=';
        }
    }
    return text;
}

std::optional<std::string> fromBase64(std::string_view text)
{
    if (text.size() % 4 != 0) {
        return std::nullopt;
    }
    std::string bytes;
    bytes.reserve(text.size() / 4 * 3);
    for (std::size_t i = 0; i < text.size(); i += 4) {
        std::size_t letters = 4;
        if (i + 4 == text.size()) {
            while (letters > 2 && text[i + letters - 1] == '=') {
                --letters;
            }
        }
        std::uint32_t group = 0;
        for (std::size_t k = 0; k < 4; ++k) {
            const std::uint8_t value = k < letters ? kValues[static_cast<unsigned char>(text[i + k])] : 0;
            if (value == kNone) {
                return std::nullopt;
            }
            group = group << 6 | value;
        }
        const std::uint32_t unused = letters == 2 ? 0xffff : letters == 3 ? 0xff : 0;
        if ((group & unused) != 0) {
            return std::nullopt;
        }
        for (std::size_t k = 0; k + 1 < letters; ++k) {
            bytes += static_cast<char>(group >> (16 - 8 * k) & 255);
        }
    }
    return bytes;
}

}  // namespace tapward::document
