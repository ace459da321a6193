// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// One name for Catch2 2.13 (Debian 12) and 3.x (Debian 13).
#ifdef CATCH2_V2
#include <catch2/catch.hpp>
#else
#include <catch2/catch_all.hpp>
using Catch::Approx;
#endif

using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
