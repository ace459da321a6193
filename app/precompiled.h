// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// What many files of the window read, compiled once for all of them. A file still includes what it uses. More headers
// here do not make the build faster: each file takes up all of them (all of QtWidgets cost a third more).
#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <QApplication>
#include <QBoxLayout>
#include <QComboBox>
#include <QFileInfo>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPainter>
#include <QPushButton>
#include <QSettings>
#include <QString>
#include <QTimer>
#include <QVariant>
#include <set>
#include <string>
#include <utility>
#include <vector>
