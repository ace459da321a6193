// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>
#include <QImage>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QTemporaryDir>
#include <random>

#include "document/floor_plan.h"
#include "panels/details_panel.h"
#include "panels/floor_plan_box.h"
#include "panels/trace_dialog.h"
#include "panels_support.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

struct FloorPlanBench {
    FloorPlanBench()
    {
        session.startNew({});
        session.perform(document::placePart(session.drawing(), "floor_plan", {0, 0}, document::Stage::Existing));
        plan = session.lastAdded().front();
    }
    QString picture(int width, int height, const char* name, bool noise = false)
    {
        QImage image(width, height, QImage::Format_RGB32);
        image.fill(Qt::white);
        std::mt19937 random(7);
        if (noise)
            for (int y = 0; y < height; ++y)
                for (int x = 0; x < width; ++x)
                    image.setPixel(x, y, static_cast<uint>(random()));
        const QString path = folder.filePath(QString::fromLatin1(name));
        REQUIRE(image.save(path));
        return path;
    }
    const document::Part& part() const { return *session.drawing().find(plan); }
    QTemporaryDir folder;
    Session session;
    document::PartId plan;
};

}  // namespace

TEST_CASE("a picture chosen for a floor plan is inside the drawing and undone in one step", "[panels]")
{
    FloorPlanBench bench;
    const auto before = bytes(bench.session);
    const int steps = bench.session.undoStack().count();
    FloorPlanBox box(bench.session, bench.plan);
    box.takePicture(bench.picture(400, 200, "hall.png"));
    CHECK(bench.session.undoStack().count() == steps + 1);
    const auto area = document::planArea(bench.part());
    REQUIRE(area);
    CHECK_THAT((area->right - area->left) / (area->bottom - area->top), WithinRel(2.0, 1e-9));
    CHECK(bytes(bench.session).find("hall.png") == std::string::npos);  // no file is named, only its title
    bench.session.undoStack().undo();
    CHECK(bytes(bench.session) == before);
}

TEST_CASE("a large noisy picture is made to fit the bounds; other files are refused in words", "[panels]")
{
    FloorPlanBench bench;
    const auto fitted = planPictureFrom(bench.picture(2200, 1400, "noise.png", true));
    REQUIRE(fitted);
    CHECK(document::pictureInfo({fitted->constData(), static_cast<std::size_t>(fitted->size())}));
    const QString text = bench.folder.filePath(QStringLiteral("text.png"));
    QFile file(text);
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write("not a picture");
    file.close();
    const auto before = bytes(bench.session);
    FloorPlanBox box(bench.session, bench.plan);
    box.takePicture(text);
    CHECK_FALSE(box.findChild<QLabel*>(QStringLiteral("complaint"))->text().isEmpty());
    box.takePicture(bench.folder.filePath(QStringLiteral("missing.jpg")));
    CHECK(bytes(bench.session) == before);
}

TEST_CASE("lengths from the plan are offered, measured ones unticked, and taken in one step", "[panels]")
{
    FloorPlanBench bench;
    FloorPlanBox box(bench.session, bench.plan);
    box.takePicture(bench.picture(400, 400, "hall.png"));
    for (const double y : {10.0, 20.0})
        bench.session.perform(document::connect(bench.session.drawing(), {document::kNoPart, {}, {10, y}},
                                                {document::kNoPart, {}, {30, y}}, document::Stage::Existing));
    const auto second = bench.session.lastAdded().front();
    bench.session.perform(document::Edit{
        Message("test"), {document::SetField{second, "length_m", parts::Entry{9.0, parts::Basis::Measured}}}});
    bench.session.perform(document::scalePlan(bench.session.drawing(), bench.plan, {0, 0}, {10, 0}, 1.0));
    const auto before = bytes(bench.session);
    const int steps = bench.session.undoStack().count();
    TraceDialog dialog(bench.session);
    REQUIRE(dialog.table().rowCount() == 2);
    CHECK(dialog.table().item(0, 0)->checkState() == Qt::Checked);
    CHECK(dialog.table().item(1, 0)->checkState() == Qt::Unchecked);
    CHECK(bytes(bench.session) == before);
    dialog.accept();
    CHECK(bench.session.undoStack().count() == steps + 1);
    CHECK_THAT(document::values(*bench.session.drawing().find(second - 1)).number("length_m"), WithinAbs(2.0, 1e-9));
    CHECK(document::values(*bench.session.drawing().find(second)).number("length_m") == 9.0);
}

TEST_CASE("the details of a floor plan hide the picture's text and offer what one does with it", "[panels]")
{
    FloorPlanBench bench;
    DetailsPanel panel(bench.session);
    panel.show();
    bench.session.select({bench.plan});
    CHECK(panel.findChild<FloorPlanBox*>());
    CHECK_FALSE(named<QWidget>(panel, QStringLiteral("Picture")));
    CHECK(named<QWidget>(panel, QStringLiteral("Strength")));
    document::PartId asked = document::kNoPart;
    QObject::connect(&panel, &DetailsPanel::scaleRequested, &panel, [&](document::PartId plan) { asked = plan; });
    Q_EMIT panel.findChild<FloorPlanBox*>()->scaleRequested(bench.plan);
    CHECK(asked == bench.plan);
}
