// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/floor_plan.h"

#include <rapidcheck.h>

#include "document/base64.h"
#include "document/file.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;
using namespace std::string_literals;

namespace {

std::string png(std::uint32_t width, std::uint32_t height)
{
    std::string bytes = "\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR"s;
    for (const std::uint32_t side : {width, height})
        for (int shift = 24; shift >= 0; shift -= 8)
            bytes += static_cast<char>(side >> shift & 255);
    return bytes + "\x08\x06\0\0\0"s;
}

/// SOI, an application segment of so many bytes, a baseline frame header.
std::string jpeg(int width, int height, int applicationBytes = 14)
{
    std::string bytes = "\xff\xd8\xff\xe0"s;
    bytes += static_cast<char>((applicationBytes + 2) >> 8);
    bytes += static_cast<char>((applicationBytes + 2) & 255);
    bytes += std::string(static_cast<std::size_t>(applicationBytes), 'x');
    bytes += "\xff\xc0\0\x11\x08"s;
    for (const int side : {height, width}) {
        bytes += static_cast<char>(side >> 8);
        bytes += static_cast<char>(side & 255);
    }
    return bytes + std::string(12, '\0');
}

/// A plan with a picture of 600 by 300 pixels at (0, 0), 120 modules wide; a pipe of 20 + 10 modules over it.
Drawing traced()
{
    Drawing drawing;
    apply(drawing, *placePart(drawing, "floor_plan", {0, 0}, Stage::Existing));
    apply(drawing, *setPlanPicture(drawing, 1, png(600, 300), "plan"));
    apply(drawing, *connect(drawing, {kNoPart, {}, {10, 10}}, {kNoPart, {}, {30, 20}}, Stage::Existing));
    return drawing;
}

}  // namespace

TEST_CASE("base 64 gives the published examples, both ways", "[floorplan]")
{
    // RFC 4648, section 10
    const std::pair<const char*, const char*> vectors[] = {{"", ""},
                                                           {"f", "Zg=="},
                                                           {"fo", "Zm8="},
                                                           {"foo", "Zm9v"},
                                                           {"foob", "Zm9vYg=="},
                                                           {"fooba", "Zm9vYmE="},
                                                           {"foobar", "Zm9vYmFy"}};
    for (const auto& [bytes, text] : vectors) {
        CHECK(toBase64(bytes) == text);
        CHECK(fromBase64(text) == std::string(bytes));
    }
    for (const char* bad : {"Zg=", "Zg", "Z===", "Zh==", "Zm9=", "Zm 8", "Zg==Zg==", "Zm8=\n", "===="}) {
        CAPTURE(bad);
        CHECK_FALSE(fromBase64(bad));
    }
    CHECK(rc::check([](const std::string& bytes) { RC_ASSERT(fromBase64(toBase64(bytes)) == bytes); }));
}

TEST_CASE("a picture's size is read from its header", "[floorplan]")
{
    const auto one = pictureInfo(png(600, 300));
    REQUIRE(one);
    CHECK(one->width_px == 600);
    CHECK(one->height_px == 300);
    const auto two = pictureInfo(jpeg(640, 481));
    REQUIRE(two);
    CHECK(two->format == PictureFormat::Jpeg);
    CHECK(two->width_px == 640);
    CHECK(two->height_px == 481);
    CHECK(pictureInfo(jpeg(640, 481, 60000)));
}

TEST_CASE("pictures beyond the bounds, cut short or of another format are refused with a remedy", "[floorplan]")
{
    for (const std::string& bad :
         {png(6001, 10), png(5000, 5000), png(0, 10), png(0xffffffffu, 0xffffffffu), png(600, 300).substr(0, 20),
          jpeg(640, 0), jpeg(640, 480).substr(0, 22), "GIF89a\1\0\1\0"s, ""s,
          png(600, 300) + std::string(kMostPictureBytes, 'x'), "\xff\xd8\xff\xda\0\2"s, "\xff\xd8\xff\xe0\0\0"s}) {
        const auto info = pictureInfo(bad);
        REQUIRE_FALSE(info);
        CHECK_FALSE(info.error().remedy.empty());
    }
    CHECK(rc::check([](const std::vector<std::uint8_t>& tail, bool isPng) {
        std::string bytes = isPng ? png(600, 300).substr(0, 12) : "\xff\xd8\xff"s;
        bytes.append(tail.begin(), tail.end());
        const auto info = pictureInfo(bytes);
        RC_ASSERT(!info || (info->width_px > 0 && info->width_px <= kMostPictureSide_px));
    }));
}

TEST_CASE("a drawing with a picture is the same after saving, and a wrong picture in a file is refused", "[floorplan]")
{
    Drawing drawing = traced();
    const std::string text = write(drawing);
    const auto back = read(text);
    REQUIRE(back);
    CHECK(*back == drawing);
    CHECK(write(*back) == text);

    std::string broken = text;
    broken.replace(broken.find("iVBOR"), 5, "iVB*R");
    const auto refused = read(broken);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().where == "/parts/0/fields/picture");

    // As long as a picture may be, and one byte more; other texts keep their short limit.
    const auto long_ = setPlanPicture(drawing, 1, png(600, 300) + std::string(kMostPictureBytes - 29, 'x'), "plan");
    REQUIRE(long_);
    apply(drawing, *long_);
    CHECK(read(write(drawing)));
    CHECK_FALSE(setPlanPicture(drawing, 1, png(600, 300) + std::string(kMostPictureBytes - 28, 'x'), "plan"));
    std::string name = text;
    name.replace(name.find("\"plan\""), 6, '"' + std::string(9000, 'n') + '"');
    CHECK_FALSE(read(name));
}

TEST_CASE("two points and a length scale a plan, whatever its size on the drawing", "[floorplan]")
{
    Drawing drawing = traced();
    CHECK_FALSE(metresPerModule(*drawing.find(1)));
    CHECK(tracedLengths(drawing).empty());
    // 3 and 4 modules apart in x and y: 5 modules; 2 m make 0.4 m a module
    const auto edit = scalePlan(drawing, 1, {1, 1}, {4, 5}, 2.0);
    REQUIRE(edit);
    apply(drawing, *edit);
    CHECK_THAT(*metresPerModule(*drawing.find(1)), WithinRel(0.4, 1e-12));
    apply(drawing, Edit{{}, {SetField{1, "width_modules", parts::Entry{240.0, parts::Basis::Estimated}}}});
    CHECK_THAT(*metresPerModule(*drawing.find(1)), WithinRel(0.2, 1e-12));
    CHECK_FALSE(scalePlan(drawing, 1, {1, 1}, {1, 1.1}, 2.0));
    CHECK_FALSE(scalePlan(drawing, 1, {1, 1}, {4, 5}, 0));
    CHECK_FALSE(scalePlan(drawing, 1, {1, 1}, {4, 5}, NAN));
    CHECK_FALSE(scalePlan(drawing, 2, {1, 1}, {4, 5}, 2.0));
}

TEST_CASE("a pipe over a scaled plan gets its drawn length proposed, with the rise; nothing changes by itself",
          "[floorplan]")
{
    Drawing drawing = traced();
    apply(drawing, *scalePlan(drawing, 1, {0, 0}, {10, 0}, 1.0));  // 0.1 m a module
    const std::string before = write(drawing);
    auto lengths = tracedLengths(drawing);
    REQUIRE(lengths.size() == 1);
    CHECK_THAT(lengths[0].traced_m, WithinAbs(3.0, 1e-9));  // (20 + 10) modules of 0.1 m
    CHECK_FALSE(lengths[0].better);
    CHECK(write(drawing) == before);
    const auto edit = takeTraced(drawing, lengths);
    REQUIRE(edit);
    const Edit back = apply(drawing, *edit);
    CHECK_THAT(values(*drawing.find(2)).number("length_m"), WithinAbs(3.0, 1e-9));
    CHECK(values(*drawing.find(2)).basis("length_m") == parts::Basis::Estimated);
    CHECK(tracedLengths(drawing).empty());
    apply(drawing, back);
    CHECK(write(drawing) == before);

    apply(drawing, Edit{{}, {SetField{2, "length_m", parts::Entry{5.0, parts::Basis::Measured}}}});
    lengths = tracedLengths(drawing);
    REQUIRE(lengths.size() == 1);
    CHECK(lengths[0].better);
}

TEST_CASE("the rise between the two ends is added, and a pipe that leaves the plan is not traced", "[floorplan]")
{
    Drawing drawing = traced();
    apply(drawing, *scalePlan(drawing, 1, {0, 0}, {10, 0}, 1.0));
    apply(drawing, *placePart(drawing, "check_valve", {40, 40}, Stage::Existing));  // 3, ports 2 modules off
    apply(drawing, *placePart(drawing, "check_valve", {60, 40}, Stage::Existing));  // 4
    Part high = *drawing.find(4);
    high.height_m = 0.5;
    apply(drawing, Edit{{}, {ChangePart{high}}});
    apply(drawing, *connect(drawing, {3, "outlet", {}}, {4, "inlet", {}}, Stage::Existing));  // 5
    const auto joined = tracedLengths(drawing, {5});
    REQUIRE(joined.size() == 1);
    CHECK_THAT(joined[0].traced_m, WithinAbs(1.6 + 0.5, 1e-9));  // 16 modules of 0.1 m, and the rise
    apply(drawing, *connect(drawing, {kNoPart, {}, {10, 50}}, {kNoPart, {}, {10, 70}}, Stage::Existing));  // 6
    CHECK(tracedLengths(drawing, {6}).empty());  // the picture ends at 60
}
