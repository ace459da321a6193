// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// What nearly every file of the window reads, compiled once a room. A file still includes what it uses.
#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <QtWidgets>
#include <set>
#include <string>
#include <utility>
#include <vector>
