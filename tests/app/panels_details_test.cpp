// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/details_panel.h"

#include <map>
#include <QComboBox>
#include <QLabel>
#include <QPlainTextEdit>
#include <QToolButton>

#include "panels/say.h"
#include "panels/value_edit.h"
#include "panels_support.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

struct DetailsBench {
    DetailsBench() : panel(session)
    {
        REQUIRE_FALSE(session.open(samplePath()));
        panel.resize(420, 700);
        panel.show();
    }
    /// The first number field of what is selected.
    ValueEdit* field(const char* label) { return named<ValueEdit>(panel, QString::fromLatin1(label)); }
    Session session;
    DetailsPanel panel;
};

/// The first pipe: every kind has fields, a pipe's length is sure to be one.
const parts::Field& lengthOf(const document::Part& part)
{
    for (const auto& field : document::kindOf(part).fields)
        if (field.key == "length_m")
            return field;
    throw std::runtime_error("pipes have a length");
}

}  // namespace

TEST_CASE("a typed length is committed as one undo step and undone to the same bytes", "[panels]")
{
    DetailsBench bench;
    const auto before = bytes(bench.session);
    const auto id = idOf(bench.session, "L1");
    bench.session.select({id});
    const auto& field = lengthOf(*bench.session.drawing().find(id));
    auto* edit = named<ValueEdit>(bench.panel, say(field.label));
    REQUIRE(edit);
    typeOver(edit, QStringLiteral("2 ft 3 in"));
    QTest::keyClick(edit, Qt::Key_Return);
    // 27 in of 0.0254 m, NIST SP 811:2008
    CHECK_THAT(document::values(*bench.session.drawing().find(id)).number("length_m"), WithinAbs(27 * 0.0254, 1e-12));
    CHECK(bench.session.undoStack().count() == 1);
    CHECK(bytes(bench.session) != before);
    bench.session.undoStack().undo();
    CHECK(bytes(bench.session) == before);
    CHECK(edit->text().toDouble() > 0);
}

TEST_CASE("switching units a hundred times while a field is edited leaves the file as it was", "[panels]")
{
    DetailsBench bench;
    const auto before = bytes(bench.session);
    for (const char* tag : {"L1", "WH1", "P1", "C1", "CV1"}) {
        bench.session.select({idOf(bench.session, tag)});
        const auto edits = bench.panel.findChildren<ValueEdit*>();
        REQUIRE_FALSE(edits.isEmpty());
        edits.front()->setFocus();
        for (int i = 0; i < 20; ++i)
            bench.session.setUnits(i % 2 == 0 ? UnitSystem::Metric : UnitSystem::Us);
        for (auto* edit : edits)
            QTest::keyClick(edit, Qt::Key_Return);
    }
    CHECK(bytes(bench.session) == before);
    CHECK(bench.session.undoStack().count() == 0);
}

TEST_CASE("several parts of a kind show what differs as mixed, and are set together in one step", "[panels]")
{
    DetailsBench bench;
    const std::vector ids{idOf(bench.session, "L1"), idOf(bench.session, "L2"), idOf(bench.session, "L3")};
    bench.session.perform(
        document::Edit{Message("test"),
                       {document::SetField{ids[0], "length_m", parts::Entry{1.0, parts::Basis::Measured}},
                        document::SetField{ids[1], "length_m", parts::Entry{2.0, parts::Basis::Measured}}}});
    bench.session.select(ids);
    auto* edit = named<ValueEdit>(bench.panel, say(lengthOf(*bench.session.drawing().find(ids[0])).label));
    REQUIRE(edit);
    CHECK(edit->text().isEmpty());
    CHECK(edit->placeholderText() == QStringLiteral("mixed"));
    const int steps = bench.session.undoStack().count();
    typeOver(edit, QStringLiteral("10"));
    QTest::keyClick(edit, Qt::Key_Return);
    for (const auto id : ids)
        CHECK_THAT(document::values(*bench.session.drawing().find(id)).number("length_m"), WithinAbs(3.048, 1e-12));
    CHECK(bench.session.undoStack().count() == steps + 1);
}

TEST_CASE("a typed value is an estimate until its basis is stated, and reset brings the default back", "[panels]")
{
    DetailsBench bench;
    auto placed = document::placePart(bench.session.drawing(), "circulator", {200, 200}, document::Stage::Added);
    REQUIRE_FALSE(bench.session.perform(std::move(placed)));
    const auto id = bench.session.lastAdded().front();
    bench.session.select({id});
    const parts::Field* field = nullptr;
    for (const auto& one : document::kindOf(*bench.session.drawing().find(id)).fields)
        if (one.type == parts::FieldType::Number && !field)
            field = &one;
    REQUIRE(field);
    CAPTURE(field->key);
    const auto values = [&] { return document::values(*bench.session.drawing().find(id)); };
    const double initial = values().number(field->key);
    auto* edit = named<ValueEdit>(bench.panel, say(field->label));
    REQUIRE(edit);
    const double wanted = initial * 1.01 <= field->most ? initial * 1.01 : initial * 0.99;
    typeOver(edit, editableNumber(wanted, field->quantity, UnitSystem::Us));
    QTest::keyClick(edit, Qt::Key_Return);
    CHECK(values().isSet(field->key));
    CHECK(values().basis(field->key) == parts::Basis::Estimated);
    auto* basis = named<QComboBox>(bench.panel, QStringLiteral("Basis of %1").arg(say(field->label)));
    REQUIRE(basis);
    const double before = values().number(field->key);
    const int measured = basis->findData(int(parts::Basis::Measured));
    basis->setCurrentIndex(measured);
    Q_EMIT basis->activated(measured);
    CHECK(values().basis(field->key) == parts::Basis::Measured);
    CHECK(values().number(field->key) == before);
    auto* reset = named<QToolButton>(bench.panel, QStringLiteral("Reset %1 to the default").arg(say(field->label)));
    REQUIRE(reset);
    CHECK(reset->isEnabled());
    QTest::mouseClick(reset, Qt::LeftButton);
    CHECK_FALSE(values().isSet(field->key));
    CHECK(values().number(field->key) == initial);
    CHECK_FALSE(reset->isEnabled());
}

TEST_CASE("a tag that is taken is refused in place", "[panels]")
{
    DetailsBench bench;
    bench.session.select({idOf(bench.session, "P1")});
    auto* tag = named<QLineEdit>(bench.panel, QStringLiteral("Tag"));
    REQUIRE(tag);
    typeOver(tag, QStringLiteral("P2"));
    QTest::keyClick(tag, Qt::Key_Return);
    CHECK(bench.session.undoStack().count() == 0);
    bool said = false;
    for (const auto* label : bench.panel.findChildren<QLabel*>())
        said = said
               || (!label->isHidden() && label->text().contains(QStringLiteral("P2"))
                   && label->text().contains(QStringLiteral("already")));
    CHECK(said);
}

TEST_CASE("every control of every kind of part has a name of its own", "[panels]")
{
    Session session;
    DetailsPanel panel(session);
    panel.resize(420, 700);
    panel.show();
    const auto check = [&](const QString& what) {
        CAPTURE(what);
        std::map<QString, int> names;
        for (auto* widget : panel.findChildren<QWidget*>()) {
            if (!widget->isVisible() || !(widget->focusPolicy() & Qt::TabFocus)
                || widget->objectName().startsWith(QLatin1String("qt_")))
                continue;
            CAPTURE(widget->metaObject()->className());
            CHECK_FALSE(spokenName(widget).isEmpty());
            ++names[spokenName(widget)];
        }
        for (const auto& [name, count] : names) {
            CAPTURE(name);
            CHECK(count == 1);
        }
    };
    check(QStringLiteral("job"));
    double x = 0;
    for (const auto* kind : parts::catalogue()) {
        if (kind->isPipe)
            continue;
        REQUIRE_FALSE(
            session.perform(document::placePart(session.drawing(), kind->id, {x += 20, 0}, document::Stage::Existing)));
        session.select({session.lastAdded().front()});
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        check(plain(kind->id));
    }
}
