// SPDX-License-Identifier: GPL-3.0-or-later
#ifdef CATCH2_V2
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
#else
#include <catch2/catch_session.hpp>
int main(int argc, char** argv) { return Catch::Session().run(argc, argv); }
#endif
