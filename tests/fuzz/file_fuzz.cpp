// SPDX-License-Identifier: GPL-3.0-or-later
// Any bytes at all go to the file reader. What it takes has to be a whole document: written and read again it
// is the same, and every pipe in it can be routed. What it refuses has to say why.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "document/edit.h"
#include "document/file.h"

using namespace tapward;

namespace {

void require(bool holds)
{
    if (!holds) {
        std::abort();
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    const auto drawing = document::read(text);
    if (drawing) {
        const std::string written = document::write(*drawing);
        const auto again = document::read(written);
        require(again.has_value());
        require(*again == *drawing);
        require(document::write(*again) == written);
        for (const document::Part& part : drawing->parts) {
            const parts::PartKind& kind = document::kindOf(part);
            if (kind.isPipe) {
                require(document::route(*drawing, part).size() >= 2);
            }
            if (kind.model) {
                (void)kind.model(document::values(part));
            }
            if (kind.materials) {
                (void)kind.materials(document::values(part));
            }
        }
    } else {
        require(!drawing.error().what.empty() && !drawing.error().remedy.empty());
        (void)render(drawing.error().what, UnitSystem::Us);
    }
    const auto parts = document::readParts(text);
    if (parts) {
        const document::Drawing empty;
        const auto paste = document::pasteParts(empty, *parts, 1, 1);
        require(paste.has_value() || !paste.error().what.empty());
    }
    return 0;
}
