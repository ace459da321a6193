// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QTemporaryDir>

#include "panels/stock_dialog.h"
#include "panels_support.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

struct StockBench {
    StockBench()
    {
        StockStore().setPath(folder.filePath(QStringLiteral("shop/stock.tapstock")));
        REQUIRE_FALSE(session.open(samplePath()));
    }
    ~StockBench() { StockStore().setPath({}); }
    QString complaint(const StockDialog& dialog) const
    {
        const auto* label = dialog.findChild<QLabel*>(QStringLiteral("complaint"));
        return label->isHidden() ? QString() : label->text();
    }
    QTemporaryDir folder;
    Session session;
};

}  // namespace

TEST_CASE("a part kept in stock is chosen for another one in one undo step", "[panels]")
{
    StockBench bench;
    bench.session.perform(document::placePart(bench.session.drawing(), "circulator", {0, 200}, document::Stage::Added));
    const auto other = bench.session.lastAdded().front();
    const auto before = bytes(bench.session);
    StockDialog dialog(bench.session);
    bench.session.select({idOf(bench.session, "P1")});
    dialog.keep(QStringLiteral("Loop pump, invented"));
    CHECK(bytes(bench.session) == before);
    REQUIRE(StockStore().load().value().items.size() == 1);
    REQUIRE(dialog.table().rowCount() == 1);

    const int steps = bench.session.undoStack().count();
    bench.session.select({other});
    dialog.choose();
    CHECK(bench.complaint(dialog).isEmpty());
    CHECK(bench.session.undoStack().count() == steps + 1);
    const auto curve = [&](document::PartId id) {
        return document::values(*bench.session.drawing().find(id)).curve("curve");
    };
    CHECK(curve(other) == curve(idOf(bench.session, "P1")));
    CHECK(document::values(*bench.session.drawing().find(other)).basis("curve") == parts::Basis::DataSheet);
    bench.session.undoStack().undo();
    CHECK(bytes(bench.session) == before);
}

TEST_CASE("a rating and a price typed into the stock list are in its file", "[panels]")
{
    StockBench bench;
    StockDialog dialog(bench.session);
    bench.session.select({idOf(bench.session, "P1")});
    dialog.keep(QStringLiteral("Loop pump, invented"));
    dialog.table().item(0, 2)->setText(QStringLiteral("12 V"));
    dialog.table().item(0, 3)->setText(QStringLiteral("3*20.5"));
    const auto item = StockStore().load().value().items.at(0);
    CHECK(item.rating == "12 V");
    CHECK(std::get<double>(item.fields.at("price")) == 61.5);
    dialog.table().item(0, 3)->setText(QStringLiteral("dear"));
    CHECK_FALSE(bench.complaint(dialog).isEmpty());
    CHECK(std::get<double>(StockStore().load().value().items.at(0).fields.at("price")) == 61.5);
}

TEST_CASE("items for another kind of part are neither listed nor offered", "[panels]")
{
    StockBench bench;
    StockDialog dialog(bench.session);
    bench.session.select({idOf(bench.session, "P1")});
    dialog.keep(QStringLiteral("Loop pump, invented"));
    bench.session.select({idOf(bench.session, "L1")});
    CHECK(dialog.table().rowCount() == 0);
    dialog.choose();
    bench.session.select({});
    CHECK(dialog.table().rowCount() == 1);
}

TEST_CASE("a stock file that cannot be read is said so and never written over", "[panels]")
{
    StockBench bench;
    const QString path = bench.folder.filePath(QStringLiteral("torn.tapstock"));
    QFile file(path);
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write("{\"format\": \"tapward-stock\", \"vers");
    file.close();
    StockStore().setPath(path);
    StockDialog dialog(bench.session);
    CHECK_FALSE(bench.complaint(dialog).isEmpty());
    bench.session.select({idOf(bench.session, "P1")});
    dialog.keep(QStringLiteral("Loop pump"));
    CHECK_FALSE(bench.complaint(dialog).isEmpty());
    REQUIRE(file.open(QIODevice::ReadOnly));
    CHECK(file.readAll() == "{\"format\": \"tapward-stock\", \"vers");
}

TEST_CASE("a list handed on is taken in by another shop", "[panels]")
{
    StockBench bench;
    StockDialog dialog(bench.session);
    bench.session.select({idOf(bench.session, "P1")});
    dialog.keep(QStringLiteral("Loop pump"));
    const QString handed = bench.folder.filePath(QStringLiteral("handed.tapstock"));
    dialog.exportTo(handed);
    StockStore().setPath(bench.folder.filePath(QStringLiteral("other.tapstock")));
    dialog.reload();
    CHECK(dialog.table().rowCount() == 0);
    dialog.importFrom(handed);
    CHECK(dialog.table().rowCount() == 1);
    CHECK(StockStore().load().value().items.size() == 1);
}
