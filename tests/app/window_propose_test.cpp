// SPDX-License-Identifier: GPL-3.0-or-later
// Proposing a loop in a real window with the X server's own mouse: one drag on a template, the answers change, the
// variant is swapped, and undo leads back to the start to the last byte.
#include <QTest>
#include <QTreeWidget>
#include <QTreeWidgetItemIterator>

#include "document/file.h"
#include "document/proposal.h"
#include "panels_support.h"
#include "real_hand.h"
#include "shell/main_window.h"
#include "shell/start_page.h"
#include "support/catch.h"
#include "tools/editing_canvas.h"
#include "tray/assembly_list.h"
#include "tray/tray.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

/// Seconds until the tap is at its target in the case shown, or nothing.
std::optional<double> warmAfter(MainWindow& window)
{
    const auto* shown = window.session().currentCase();
    const auto* scalar = shown != nullptr ? shown->scalar("time_to_target") : nullptr;
    return scalar != nullptr ? scalar->value : std::nullopt;
}

}  // namespace

TEST_CASE("a loop proposed by one drag changes flow and warm-up, is swapped, and undone to the last byte", "[window]")
{
    if (!handsAreReal()) {
        WARN("No X server: this test needs a real window (tests/run gives it one).");
        return;
    }
    MainWindow window;
    window.resize(1380, 860);
    window.move(0, 0);
    window.show();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    REQUIRE(templates().size() >= 4);
    REQUIRE(window.openSample(templates().back().resource));
    REQUIRE(waitForAnswer(window.session()));
    QTest::qWait(300);
    const std::string start = document::write(window.session().drawing());
    CHECK_FALSE(window.session().prediction()->loop.flow_m3s);
    const auto cases = window.session().prediction()->cases.size();

    // Double-click the variant in the tray, then drag from the hot side to the cold side.
    auto* list = window.findChild<Tray*>()->assemblies();
    QTreeWidgetItem* variant = nullptr;
    for (QTreeWidgetItemIterator it(list); *it; ++it)
        if (variant == nullptr && (*it)->text(0) == QStringLiteral("One circulator"))
            variant = *it;
    REQUIRE(variant);
    list->scrollToItem(variant);
    const QPoint item = list->viewport()->mapToGlobal(list->visualItemRect(variant).center());
    realClick(item);

    auto& canvas = window.canvas();
    const auto& drawing = window.session().drawing();
    document::Place hot;
    for (const auto& part : drawing.parts)
        if (document::kindOf(part).isPipe && !document::beginRefusal(drawing, {part.id, 0.5, {}}))
            hot = {part.id, 0.5, {}};
    const auto cold = document::usualEnd(drawing, hot, document::ReturnWay::ColdLine);
    REQUIRE(cold);
    const auto on = [&](const document::Place& place) {
        const auto* pipe = canvas.layoutOfDrawing().pipe(place.pipe);
        return canvas.viewport()->mapToGlobal(canvas.mapFromScene(pipe->path.pointAtPercent(place.share)));
    };
    realDrag(on(hot), on(*cold), 0.1);
    REQUIRE(QTest::qWaitFor([&] { return document::proposed(window.session().drawing()).has_value(); }, 10000));
    REQUIRE(waitForAnswer(window.session()));
    REQUIRE(window.session().prediction()->loop.flow_m3s);
    const double flow = *window.session().prediction()->loop.flow_m3s;
    CHECK(flow > 1e-6);
    CHECK(window.session().prediction()->cases.size() == cases + 4);
    CHECK(window.session().caseName() == "Preheat run");
    const auto warm = warmAfter(window);

    // Two circulators in parallel: more flow, warm sooner.
    QAction* swap = nullptr;
    for (auto* action : window.findChildren<QAction*>())
        if (action->data().toString() == QStringLiteral("cold_line.two_parallel"))
            swap = action;
    REQUIRE(swap);
    swap->trigger();
    REQUIRE(document::proposed(window.session().drawing()) == document::variantNamed("cold_line.two_parallel"));
    REQUIRE(waitForAnswer(window.session()));
    CHECK(*window.session().prediction()->loop.flow_m3s > flow);
    const auto warmer = warmAfter(window);
    if (warm && warmer)
        CHECK(*warmer < *warm);

    canvas.setFocus();
    QTest::keyClick(&window, Qt::Key_Z, Qt::ControlModifier);
    QTest::keyClick(&window, Qt::Key_Z, Qt::ControlModifier);
    CHECK(document::write(window.session().drawing()) == start);
    CHECK_FALSE(window.session().isModified());
}
