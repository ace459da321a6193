// SPDX-License-Identifier: GPL-3.0-or-later
#include <QLabel>
#include <QPushButton>

#include "panels/details_panel.h"
#include "panels/jug_dialog.h"
#include "panels/say.h"
#include "panels/value_edit.h"
#include "panels_support.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

document::PartId someFaucet(const Session& session)
{
    for (const auto& part : session.drawing().parts)
        if (part.kind == "faucet")
            return part.id;
    return document::kNoPart;
}

void enter(ValueEdit& edit, const char* text)
{
    typeOver(&edit, QString::fromLatin1(text));
    QTest::keyClick(&edit, Qt::Key_Return);
}

}  // namespace

TEST_CASE("three tries with the jug set the measured flow in one undo step", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    const auto before = bytes(session);
    const auto id = someFaucet(session);
    REQUIRE(id != document::kNoPart);
    JugDialog dialog(session, id);
    dialog.show();
    enter(dialog.volume(0), "1");  // gal; the other lines take the same jug
    enter(dialog.seconds(0), "60");
    enter(dialog.seconds(1), "50");
    enter(dialog.seconds(2), "60");
    enter(dialog.pressure(), "45");
    CHECK(dialog.tries().size() == 3);
    dialog.accept();
    CHECK(dialog.result() == QDialog::Accepted);
    CHECK(session.undoStack().count() == 1);
    const auto held = document::values(*session.drawing().find(id));
    // (1 + 1.2 + 1) / 3 gpm by hand; 1 gpm = 3.785411784e-3 / 60 m3/s, NIST SP 811:2008
    CHECK_THAT(held.number("rated_flow_m3s"), WithinRel(3.2 / 3 * 3.785411784e-3 / 60, 1e-9));
    CHECK(held.basis("rated_flow_m3s") == parts::Basis::Measured);
    // 1 psi = 6,894.757 Pa, NIST SP 811:2008
    CHECK_THAT(held.number("rated_pressure_Pa"), WithinRel(45 * 6894.757, 1e-6));
    session.undoStack().undo();
    CHECK(bytes(session) == before);
}

TEST_CASE("a text that is no volume keeps the dialog open and the drawing as it was", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    const auto before = bytes(session);
    JugDialog dialog(session, someFaucet(session));
    dialog.show();
    enter(dialog.volume(0), "1");
    enter(dialog.seconds(0), "60");
    enter(dialog.volume(1), "a bucket");
    dialog.accept();
    CHECK(dialog.result() != QDialog::Accepted);
    CHECK(bytes(session) == before);
    CHECK_FALSE(dialog.findChild<QLabel*>(QStringLiteral("complaint"))->text().isEmpty());
}

TEST_CASE("outlets offer the jug, pumps do not", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    DetailsPanel panel(session);
    panel.show();
    const auto offered = [&panel] {
        for (const auto* button : panel.findChildren<QPushButton*>())
            if (button->text() == DetailsPanel::tr("Flow by Jug and Stopwatch\u2026") && button->isVisible())
                return true;
        return false;
    };
    session.select({someFaucet(session)});
    CHECK(offered());
    session.select({idOf(session, "P1")});
    CHECK_FALSE(offered());
}

TEST_CASE("the dialog grows with what it has to say: nothing is squashed or cut", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    JugDialog dialog(session, someFaucet(session));
    dialog.show();
    QTest::qWait(20);
    const int fieldHeight = dialog.volume(0).height();
    enter(dialog.volume(0), "1");
    enter(dialog.seconds(0), "60");
    enter(dialog.seconds(1), "50");
    QTest::qWait(20);
    const auto labels = dialog.findChildren<QLabel*>();
    CHECK(std::ranges::any_of(labels, [](const QLabel* label) { return label->text().contains(u"differ by"); }));
    for (const auto* label : labels) {
        CAPTURE(label->text().toStdString());
        CHECK(label->height()
              >= (label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height()));
    }
    for (int line = 0; line < 3; ++line)
        CHECK(dialog.volume(line).height() == fieldHeight);
}

TEST_CASE("without a gauge the dialog takes the pressure that the drawing leaves, as an estimate", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    const auto id = someFaucet(session);
    JugDialog dialog(session, id);
    dialog.show();
    REQUIRE(dialog.fedBy().count() > 0);
    enter(dialog.volume(0), "1");
    enter(dialog.seconds(0), "60");
    dialog.accept();
    CHECK(dialog.result() == QDialog::Accepted);
    const auto held = document::values(*session.drawing().find(id));
    CHECK(held.basis("rated_pressure_Pa") == parts::Basis::Estimated);
    CHECK(held.number("rated_pressure_Pa") < 60 * 6894.757);  // less than the supply's, never the rating's

    JugDialog noted(session, id);
    noted.show();
    enter(noted.volume(0), "1");
    enter(noted.seconds(0), "60");
    enter(noted.pressure(), "40");
    CHECK_FALSE(noted.fedBy().isEnabled());
}
