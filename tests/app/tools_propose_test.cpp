// SPDX-License-Identifier: GPL-3.0-or-later
// Proposing a loop on the canvas: by one drag, by keyboard alone, by a drop from the tray; kept assemblies.
#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "document/file.h"
#include "document/proposal.h"
#include "session/own_assemblies.h"
#include "tools/assembly_hand.h"
#include "tools_bench.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

/// A coach in one long line: city water, a heater, and taps one after the other on its hot and cold mains.
document::Drawing hallway(int taps)
{
    document::Drawing coach;
    const auto add = [&](const char* kind, double x, double y) {
        auto& part = coach.parts.emplace_back();
        part.id = coach.nextId++;
        part.kind = kind;
        part.tag = coach.freeTag(document::kindOf(part));
        part.at = {x, y};
        return part.id;
    };
    const auto pipe = [&](document::PartId from, const char* out, document::PartId to, const char* in) {
        auto& part = coach.parts.emplace_back();
        part.id = coach.nextId++;
        part.kind = "pipe_run";
        part.tag = coach.freeTag(document::kindOf(part));
        part.ends = {document::PipeEnd{from, out, {}}, document::PipeEnd{to, in, {}}};
        part.entries["length_m"] = {1.5, parts::Basis::Measured};
    };
    const auto city = add("city_inlet", 0, 0), first = add("tee", 6, 0), heater = add("tankless_heater", 12, -4);
    pipe(city, "outlet", first, "run_a");
    pipe(first, "branch", heater, "cold");
    auto cold = first, hot = heater;
    const char* from = "hot";
    for (int i = 1; i <= taps; ++i) {
        const auto coldTee = add("tee", 12.0 * i + 10, 0), hotTee = add("tee", 12.0 * i + 6, -4);
        const auto tap = add("faucet", 12.0 * i + 8, -10);
        pipe(cold, "run_b", coldTee, "run_a");
        pipe(hot, from, hotTee, "run_a");
        pipe(coldTee, "branch", tap, "cold");
        pipe(hotTee, "branch", tap, "hot");
        cold = coldTee;
        hot = hotTee;
        from = "run_b";
    }
    return coach;
}

struct ProposeBench : Bench {
    AssemblyHand hand{canvas, [this] { canvas.cancelTool(); }};

    ProposeBench()
    {
        auto coach =
            document::load(std::string(TAPWARD_SOURCE_DIR) + "/resources/templates/small_travel_trailer.tapward");
        REQUIRE(coach);
        session.startNew(*coach);
        canvas.fitDrawing();
        before = document::write(drawing());
    }
    /// The middle of a pipe, on screen.
    QPoint on(const document::Place& place) const
    {
        const auto* pipe = canvas.layoutOfDrawing().pipe(place.pipe);
        REQUIRE(pipe);
        return canvas.mapFromScene(pipe->path.pointAtPercent(place.share));
    }
    document::Place hot() const
    {
        document::Place best;
        for (const auto& part : drawing().parts)
            if (document::kindOf(part).isPipe && !document::beginRefusal(drawing(), {part.id, 0.5, {}}))
                best = {part.id, 0.5, {}};
        REQUIRE(best.pipe != document::kNoPart);
        return best;
    }
    document::Place cold(document::ReturnWay way = document::ReturnWay::ColdLine) const
    {
        const auto usual = document::usualEnd(drawing(), hot(), way);
        REQUIRE(usual);
        return *usual;
    }
    std::string before;
};

}  // namespace

TEST_CASE("one drag from the hot side to the cold side proposes a loop and selects it; undo is one step", "[propose]")
{
    ProposeBench b;
    b.hand.startVariant("cold_line.two_parallel");
    const int steps = b.session.undoStack().count();
    b.drag(b.on(b.hot()), b.on(b.cold()));
    CAPTURE(b.said.toStdString());
    REQUIRE(document::proposed(b.drawing()) == document::variantNamed("cold_line.two_parallel"));
    CHECK(b.session.undoStack().count() == steps + 1);
    CHECK(b.session.selection() == document::proposalParts(b.drawing()));
    CHECK(b.count("circulator") == 2);

    b.hand.swapFor({document::ReturnWay::OwnLine, document::PumpSet::One});
    CHECK(document::proposed(b.drawing()) == document::variantNamed("own_line.one"));
    CHECK(b.session.undoStack().count() == steps + 2);
    b.session.undoStack().undo();
    b.session.undoStack().undo();
    CHECK(document::write(b.drawing()) == b.before);
}

TEST_CASE("a loop in a long coach lays it in two rows, as a step of its own, and every variant takes its place there",
          "[propose][rows]")
{
    ProposeBench b;
    b.session.startNew(hallway(9));
    b.canvas.fitDrawing();
    const std::string before = document::write(b.drawing());
    const auto wide = [&] { return b.canvas.layoutOfDrawing().bounds.width(); };
    const double one = wide();
    const int steps = b.session.undoStack().count();
    b.hand.startVariant("cold_line.one");
    b.drag(b.on(b.hot()), b.on(b.cold()));
    CAPTURE(b.said.toStdString());
    REQUIRE(document::proposed(b.drawing()) == document::variantNamed("cold_line.one"));
    CHECK(b.session.undoStack().count() == steps + 2);
    CHECK(wide() < 0.75 * one);
    CHECK(b.said.contains("two rows"));
    CHECK(b.session.selection() == document::proposalParts(b.drawing()));
    for (const auto& variant : document::variants()) {
        if (variant.way == document::ReturnWay::Tank || variant == *document::proposed(b.drawing()))
            continue;  // this coach has no tank
        b.hand.swapFor(variant);
        CAPTURE(document::idOf(variant), b.said.toStdString());
        CHECK(document::proposed(b.drawing()) == variant);
        CHECK(wide() < 0.85 * one);
        b.session.undoStack().undo();
    }
    b.session.undoStack().undo();
    CHECK(document::proposed(b.drawing()));
    CHECK(wide() >= one);
    b.session.undoStack().undo();
    CHECK(document::write(b.drawing()) == before);
}

TEST_CASE("tidying up with nothing chosen is the whole drawing's, and ends in two rows where it is long", "[rows]")
{
    Bench b;
    b.session.startNew(hallway(9));
    const std::string before = document::write(b.drawing());
    const int steps = b.session.undoStack().count();
    b.session.select({});
    auto* tidy = b.canvas.action(EditingCanvas::Command::TidyUp);
    REQUIRE(tidy->isEnabled());
    tidy->trigger();
    CHECK(b.said.contains("two rows"));
    const auto place = [&](const char* tag) { return b.drawing().findTag(tag)->at; };
    CHECK(place("F9").y > place("F1").y + 12);
    CHECK(place("F9").x < place("F6").x);
    b.said.clear();
    tidy->trigger();  // in two rows already
    CHECK_FALSE(b.said.contains("two rows"));
    while (b.session.undoStack().count() > steps && b.session.undoStack().canUndo())
        b.session.undoStack().undo();
    CHECK(document::write(b.drawing()) == before);
    // Some parts: those alone.
    b.session.select({b.drawing().parts[0].id, b.drawing().parts[2].id});
    tidy->trigger();
    CHECK_FALSE(b.said.contains("laid in two rows"));
}

TEST_CASE("a loop that reaches out of sight is brought into view, and no further than needed", "[propose]")
{
    ProposeBench b;
    const auto seen = [&] { return b.canvas.viewportTransform().inverted().mapRect(QRectF(b.view()->rect())); };
    // As near as it gets with both ends in sight.
    const QPointF hot = b.canvas.mapToScene(b.on(b.hot())), cold = b.canvas.mapToScene(b.on(b.cold()));
    const QRectF ends = QRectF(hot, cold).normalized().adjusted(-20, -20, 20, 20);
    b.canvas.setZoom(std::min(b.view()->width() / ends.width(), b.view()->height() / ends.height()));
    b.canvas.centerOn(ends.center());
    const double zoom = b.canvas.zoom();
    b.hand.startVariant("cold_line.two_parallel");
    b.drag(b.on(b.hot()), b.on(b.cold()));
    REQUIRE(document::proposed(b.drawing()));
    CHECK(seen().contains(b.canvas.selectionBox()));
    CHECK(seen().contains(hot));
    CHECK(seen().contains(cold));
    CHECK(b.canvas.zoom() < zoom);
    // In sight already: the view stays as it is.
    b.canvas.setZoom(b.canvas.zoom() / 2);
    const auto still = b.canvas.viewportTransform();
    b.hand.swapFor({document::ReturnWay::ColdLine, document::PumpSet::One});
    CHECK(b.canvas.viewportTransform() == still);
}

TEST_CASE("a refused end says why and changes nothing; Esc gives the gesture up", "[propose]")
{
    ProposeBench b;
    b.hand.startVariant("cold_line.one");
    b.drag(b.on(b.cold()), b.on(b.hot()));
    CHECK(b.said.contains("carries cold water"));
    CHECK(document::write(b.drawing()) == b.before);
    b.drag(b.on(b.hot()), b.on(b.hot()) + QPoint(0, -60));
    CHECK(document::write(b.drawing()) == b.before);
    b.drag(b.on(b.hot()), b.on(b.cold()), Qt::NoModifier, false);
    b.key(Qt::Key_Escape);
    QTest::mouseRelease(b.view(), Qt::LeftButton, Qt::NoModifier, b.on(b.cold()));
    CHECK(document::write(b.drawing()) == b.before);
    b.key(Qt::Key_Escape);
    CHECK(b.canvas.tool() != &b.hand.propose());
}

TEST_CASE("a loop is proposed with the keyboard alone, and a second one is refused with the reason", "[propose]")
{
    ProposeBench b;
    b.hand.startVariant("own_line.two_series");
    b.key(Qt::Key_Right);
    CHECK(b.said.startsWith("From "));
    b.key(Qt::Key_Left);
    b.key(Qt::Key_Return);
    CHECK(b.said.startsWith("To "));
    b.key(Qt::Key_Return);
    CAPTURE(b.said.toStdString());
    REQUIRE(document::proposed(b.drawing()) == document::variantNamed("own_line.two_series"));
    const std::string after = document::write(b.drawing());
    b.hand.startVariant("tank.one");
    b.key(Qt::Key_Right);
    CHECK(b.said.contains("already is a loop"));
    CHECK(document::write(b.drawing()) == after);
}

TEST_CASE("an assembly dropped from the tray on the hot side waits for its cold end", "[propose]")
{
    ProposeBench b;
    QMimeData data;
    data.setData(QLatin1String(kAssemblyMime), "variant:tank.one");
    const QPoint at = b.on(b.hot());
    QDragEnterEvent enter(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(b.view(), &enter);
    CHECK(enter.isAccepted());
    QDragMoveEvent wrong(b.on(b.cold()), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(b.view(), &wrong);
    CHECK_FALSE(wrong.isAccepted());
    CHECK(b.said.contains("carries cold water"));
    QDragMoveEvent over(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(b.view(), &over);
    CHECK(over.isAccepted());
    QDropEvent drop(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(b.view(), &drop);
    CHECK(drop.isAccepted());
    const auto& tank = b.only("fresh_tank");
    const QPoint end = b.pixel(tank.at.x, tank.at.y);
    QTest::mouseMove(b.view(), end);
    QTest::mouseClick(b.view(), Qt::LeftButton, Qt::NoModifier, end);
    CAPTURE(b.said.toStdString());
    CHECK(document::proposed(b.drawing()) == document::variantNamed("tank.one"));
}

TEST_CASE("a kept selection comes back as new parts, and only plain names inside the folder are touched", "[propose]")
{
    QTemporaryDir home;
    const OwnAssemblies own(home.filePath("assemblies"));
    CHECK(own.list().empty());
    Bench b;
    const auto pump = b.place("circulator", 0, 0), check = b.place("check_valve", 8, 0);
    b.join(pump, "outlet", check, "inlet");
    const auto file = own.keep("  Pump & check / ../set ", b.drawing(), {pump, check});
    REQUIRE(file);
    CHECK(*file == "pump_check_set.tapward");
    REQUIRE(own.keep("Pump check set", b.drawing(), {pump}));
    REQUIRE(own.list().size() == 2);
    const auto parts = own.parts(*file);
    REQUIRE(parts);
    CHECK(parts->size() == 3);

    for (const char* const name : {"../secret.tapward", "/etc/passwd", "a/b.tapward", "x.txt", "", "..", "A.tapward"}) {
        CAPTURE(name);
        CHECK_FALSE(own.parts(name));
        CHECK(own.remove(name));
    }
    // A link out of the folder is not followed, a huge or broken file not read.
    QFile outside(home.filePath("outside.tapward"));
    REQUIRE(QFile::copy(home.filePath("assemblies/" + *file), outside.fileName()));
    REQUIRE(QFile::link(outside.fileName(), home.filePath("assemblies/linked.tapward")));
    CHECK_FALSE(own.parts("linked.tapward"));
    CHECK(own.remove("linked.tapward"));
    CHECK(outside.exists());
    QFile huge(home.filePath("assemblies/huge.tapward"));
    REQUIRE(huge.open(QIODevice::WriteOnly));
    REQUIRE(huge.resize(OwnAssemblies::kMostBytes + 1));
    huge.close();
    CHECK_FALSE(own.parts("huge.tapward"));
    CHECK(own.list().size() == 2);
    CHECK_FALSE(own.remove(*file));
    CHECK(own.list().size() == 1);
    CHECK(own.keep(" ", b.drawing(), {pump}).error().what.text == "The assembly has no name.");
    CHECK_FALSE(own.keep("empty", b.drawing(), {}));

    OwnAssemblyTool tool(b.canvas);
    tool.setParts(*parts);
    REQUIRE(tool.finish({0, 200}));
    CHECK(b.count("circulator") == 2);
    CHECK(b.session.selection().size() == 3);
}
