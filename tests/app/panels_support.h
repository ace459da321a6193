// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAccessible>
#include <QComboBox>
#include <QElapsedTimer>
#include <QLineEdit>
#include <QTest>
#include <QWidget>

#include "document/file.h"
#include "session/session.h"
#include "support/catch.h"

namespace Catch {
template <>
struct StringMaker<QString> {
    static std::string convert(const QString& text) { return text.toStdString(); }
};
}  // namespace Catch

namespace tapward::app::test {

/// How long an answer is waited for; a wait ends when it is there. (Under sanitizers studies take minutes.)
inline constexpr int kPatience_ms = 900'000;

inline QString samplePath(const char* name = "long_hall_coach")
{
    return QStringLiteral(TAPWARD_SOURCE_DIR "/samples/%1.tapward").arg(QString::fromLatin1(name));
}

inline bool waitForAnswer(Session& session, int most_ms = 60000)
{
    return QTest::qWaitFor([&] { return !session.isStale() && !session.isWorking(); }, most_ms);
}

inline document::PartId idOf(const Session& session, const char* tag)
{
    const auto* part = session.drawing().findTag(tag);
    return part ? part->id : document::kNoPart;
}

/// The visible descendant of this type with this accessible name.
template <class W>
W* named(const QWidget& root, const QString& name)
{
    for (W* widget : root.findChildren<W*>())
        if (widget->accessibleName() == name && !widget->isHidden())
            return widget;
    return nullptr;
}

inline void typeOver(QLineEdit* edit, const QString& text)
{
    edit->setFocus();
    edit->selectAll();
    QTest::keyClicks(edit, text);
}

/// What a screen reader says when the keyboard comes to this control.
inline QString spokenName(QWidget* widget)
{
    const auto* spoken = QAccessible::queryAccessibleInterface(widget);
    if (spoken && qobject_cast<QComboBox*>(widget)) {
        // On this platform a combo box speaks its choice; its name is that of the label it belongs to.
        for (const auto& relation : spoken->relations(QAccessible::Label))
            return relation.first->text(QAccessible::Name);
        return {};
    }
    return spoken ? spoken->text(QAccessible::Name) : QString();
}

inline std::string bytes(const Session& session) { return document::write(session.drawing()); }

}  // namespace tapward::app::test
