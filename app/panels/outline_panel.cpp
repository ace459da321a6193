// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/outline_panel.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <QCoreApplication>
#include <QHeaderView>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <set>

#include "document/ports.h"
#include "look/spacing.h"
#include "panels/catch_up.h"
#include "panels/say.h"

namespace tapward::app {

using document::Part;
using document::PartId;

namespace {

enum Column { kName, kFlow, kWarmth, kStage };

QString otherEnd(const document::Drawing& drawing, const document::PipeEnd& end)
{
    const Part* part = drawing.find(end.part);
    if (!part)
        return QCoreApplication::translate("outline", "open end");
    const auto* port = document::kindOf(*part).port(end.port);
    return QCoreApplication::translate("outline", "%1 at its %2")
        .arg(sayPart(*part), port ? say(port->title).toLower() : plain(end.port));
}

/// "Inlet: by L4 to Tee T2 at its Branch": one line for each port, or each end of a pipe.
QStringList connectionsOf(const document::Drawing& drawing, const document::PipesAtPorts& pipeAt, const Part& part)
{
    QStringList lines;
    const parts::PartKind& kind = document::kindOf(part);
    if (kind.isPipe) {
        lines << QCoreApplication::translate("outline", "From %1").arg(otherEnd(drawing, part.ends[0]));
        lines << QCoreApplication::translate("outline", "To %1").arg(otherEnd(drawing, part.ends[1]));
        return lines;
    }
    for (const auto& port : kind.ports) {
        const Part* pipe = pipeAt(part.id, port.id);
        if (!pipe) {
            lines << QCoreApplication::translate("outline", "%1: not connected").arg(say(port.title));
            continue;
        }
        const bool first = pipe->ends[0].part == part.id && pipe->ends[0].port == port.id;
        lines << QCoreApplication::translate("outline", "%1: by %2 to %3")
                     .arg(say(port.title), plain(pipe->tag), otherEnd(drawing, pipe->ends[first ? 1 : 0]));
    }
    return lines;
}

}  // namespace

/// Parts as the water meets them: from the supplies and heaters along the pipes, then whatever is left.
static std::vector<PartId> flowOrder(const document::Drawing& drawing)
{
    std::map<PartId, std::vector<PartId>> next;
    std::set<PartId> entered;
    for (const auto& part : drawing.parts)
        if (document::kindOf(part).isPipe) {
            if (part.ends[0].part != document::kNoPart)
                next[part.ends[0].part].push_back(part.id);
            if (part.ends[1].part != document::kNoPart) {
                next[part.id].push_back(part.ends[1].part);
                entered.insert(part.ends[1].part);
            }
        }
    std::vector<PartId> order;
    std::set<PartId> seen;
    const auto walk = [&](PartId start) {
        std::vector<PartId> stack{start};
        while (!stack.empty()) {
            const PartId id = stack.back();
            stack.pop_back();
            if (!seen.insert(id).second)
                continue;
            order.push_back(id);
            const auto& following = next[id];
            stack.insert(stack.end(), following.rbegin(), following.rend());
        }
    };
    for (const auto& part : drawing.parts)
        if (!document::kindOf(part).isPipe && !entered.contains(part.id) && next.contains(part.id))
            walk(part.id);
    for (const auto& part : drawing.parts)
        walk(part.id);
    return order;
}

OutlinePanel::OutlinePanel(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_filter(new QLineEdit), m_tree(new QTreeWidget),
      m_catchUp(new CatchUp(*this, [this] { refresh(); }))
{
    setAccessibleName(tr("Outline"));
    m_filter->setPlaceholderText(tr("Find a tag or a kind"));
    m_filter->setAccessibleName(tr("Find in outline"));
    m_filter->setClearButtonEnabled(true);
    m_tree->setAccessibleName(tr("Outline of the drawing"));
    m_tree->setColumnCount(4);
    m_tree->setHeaderLabels({tr("Part"), tr("Flow"), tr("Temperature"), tr("Stage")});
    for (int column = 0; column < m_tree->columnCount(); ++column)
        m_tree->headerItem()->setToolTip(column, m_tree->headerItem()->text(column));
    m_tree->setSelectionMode(QAbstractItemView::ExtendedSelection);
    m_tree->setFrameShape(QFrame::NoFrame);
    m_tree->setUniformRowHeights(true);
    m_tree->header()->setStretchLastSection(true);
    m_tree->header()->setSectionResizeMode(kName, QHeaderView::Interactive);
    m_tree->header()->resizeSection(kName, fontMetrics().averageCharWidth() * 27);
    m_tree->setIndentation(fontMetrics().averageCharWidth() * 2);
    // Wide enough for any flow and temperature: to fit the contents, a tree measures every row for every text set.
    for (const int column : {kFlow, kWarmth})
        m_tree->header()->resizeSection(column, fontMetrics().averageCharWidth() * 12);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(look::kNear, look::kNear, look::kNear, look::kNear);
    all->setSpacing(look::kNear);
    all->addWidget(m_filter);
    all->addWidget(m_tree, 1);

    connect(m_filter, &QLineEdit::textChanged, this, &OutlinePanel::filter);
    connect(m_filter, &QLineEdit::returnPressed, this, &OutlinePanel::findNext);
    connect(m_tree, &QTreeWidget::itemSelectionChanged, this, [this] {
        if (m_filling)
            return;
        std::vector<PartId> ids;
        for (const auto* item : m_tree->selectedItems())
            ids.push_back((item->parent() ? item->parent() : item)->data(0, Qt::UserRole).toInt());
        std::ranges::sort(ids);
        ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
        m_filling = true;
        m_session.select(std::move(ids));
        m_filling = false;
    });
    connect(m_tree, &QTreeWidget::itemActivated, this, [this](QTreeWidgetItem* item) {
        m_session.requestJump((item->parent() ? item->parent() : item)->data(0, Qt::UserRole).toInt());
    });
    connect(&session, &Session::changed, this, [this] {
        m_outdated = true;
        m_catchUp->later();
    });
    connect(&session, &Session::selectionChanged, this, [this] {
        if (!m_outdated)
            showSelection();
    });
    for (const auto signal :
         {&Session::predictionChanged, &Session::timeChanged, &Session::viewChanged, &Session::caseChanged})
        connect(&session, signal, m_catchUp, &CatchUp::later);
    rebuild();
    refreshLive();
}

void OutlinePanel::refresh()
{
    if (m_outdated) {
        rebuild();
        m_catchUp->later();  // flow and warmth
    } else {
        refreshLive();
    }
}

QTreeWidget& OutlinePanel::tree()
{
    m_catchUp->now();
    return *m_tree;
}

void OutlinePanel::rebuild()
{
    m_outdated = false;
    m_filling = true;
    const auto& drawing = m_session.drawing();
    const auto order = flowOrder(drawing);
    if (!reuse(order)) {
        std::set<PartId> open;
        for (int i = 0; i < m_tree->topLevelItemCount(); ++i)
            if (m_tree->topLevelItem(i)->isExpanded())
                open.insert(m_tree->topLevelItem(i)->data(0, Qt::UserRole).toInt());
        const auto* current = m_tree->currentItem();
        const PartId focused = current ? current->data(0, Qt::UserRole).toInt() : document::kNoPart;
        m_tree->clear();
        const document::PipesAtPorts pipeAt(drawing);
        QList<QTreeWidgetItem*> rows;
        for (const PartId id : order) {
            rows << new QTreeWidgetItem;
            for (const int column : {kFlow, kWarmth})
                rows.back()->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
            rows.back()->setData(0, Qt::UserRole, id);
            fillRow(*rows.back(), *drawing.find(id), pipeAt);
        }
        m_tree->addTopLevelItems(rows);
        for (auto* item : rows) {
            const PartId id = item->data(0, Qt::UserRole).toInt();
            for (int i = 0; i < item->childCount(); ++i)
                item->child(i)->setFirstColumnSpanned(true);
            if (open.contains(id))
                item->setExpanded(true);
            if (id == focused)
                m_tree->setCurrentItem(item, 0, QItemSelectionModel::NoUpdate);
        }
    }
    m_filling = false;
    filter();
    showSelection();
}

/// Most edits change no row or a few: those that are there are filled anew, which is cheap for what stays the same.
bool OutlinePanel::reuse(const std::vector<PartId>& order)
{
    if (m_tree->topLevelItemCount() != static_cast<int>(order.size()))
        return false;
    for (std::size_t i = 0; i < order.size(); ++i)
        if (m_tree->topLevelItem(static_cast<int>(i))->data(0, Qt::UserRole).toInt() != order[i])
            return false;
    const document::PipesAtPorts pipeAt(m_session.drawing());
    for (std::size_t i = 0; i < order.size(); ++i)
        fillRow(*m_tree->topLevelItem(static_cast<int>(i)), *m_session.drawing().find(order[i]), pipeAt);
    return true;
}

void OutlinePanel::fillRow(QTreeWidgetItem& item, const Part& part, const document::PipesAtPorts& pipeAt)
{
    const QString name = sayPart(part);
    item.setText(kName, name);
    item.setToolTip(kName, name);
    item.setText(kStage, sayStage(part.stage));
    const QStringList connections = connectionsOf(m_session.drawing(), pipeAt, part);
    item.setData(0, Qt::AccessibleDescriptionRole, connections.join(QStringLiteral("; ")));
    while (item.childCount() > connections.size())  // another file may have another kind under the same number
        delete item.takeChild(item.childCount() - 1);
    for (int i = 0; i < connections.size(); ++i) {
        auto* child = item.child(i);
        if (!child) {
            child = new QTreeWidgetItem(&item);
            child->setFirstColumnSpanned(true);
        }
        child->setText(kName, connections[i]);
        child->setToolTip(kName, connections[i]);
    }
}

void OutlinePanel::filter()
{
    const QString wanted = m_filter->text().trimmed();
    for (int i = 0; i < m_tree->topLevelItemCount(); ++i) {
        auto* item = m_tree->topLevelItem(i);
        item->setHidden(!wanted.isEmpty() && !item->text(kName).contains(wanted, Qt::CaseInsensitive));
    }
}

void OutlinePanel::showSelection()
{
    if (m_filling)
        return;
    m_filling = true;
    const auto selected = m_session.selection();
    QTreeWidgetItem* first = nullptr;
    for (int i = 0; i < m_tree->topLevelItemCount(); ++i) {
        auto* item = m_tree->topLevelItem(i);
        const bool on = std::ranges::find(selected, item->data(0, Qt::UserRole).toInt()) != selected.end();
        item->setSelected(on);
        if (on && !first)
            first = item;
    }
    if (first)
        m_tree->scrollToItem(first);
    m_filling = false;
}

void OutlinePanel::refreshLive()
{
    const auto* result = m_session.currentCase();
    const UnitSystem units = m_session.units();
    std::map<PartId, std::pair<double, double>> live;  // flow, mean temperature
    if (result && !m_session.isStale() && !result->snapshot.empty()) {
        const auto& shot = result->snapshot;
        const std::size_t moment = shot.momentAt(m_session.time());
        for (std::size_t i = 0; i < shot.tracks.size(); ++i) {
            const auto& track = shot.tracks[i];
            double sum = 0;
            for (int p = 0; p < track.points; ++p)
                sum += shot.celsius[moment * shot.stride + track.offset + static_cast<std::size_t>(p)];
            live.insert(
                {track.part,
                 {shot.flow_m3s[moment * shot.tracks.size() + i], track.points > 0 ? sum / track.points : NAN}});
        }
    }
    const QSignalBlocker quiet(m_tree->model());  // one repaint for all rows
    for (int i = 0; i < m_tree->topLevelItemCount(); ++i) {
        auto* item = m_tree->topLevelItem(i);
        const auto found = live.find(item->data(0, Qt::UserRole).toInt());
        const bool has = found != live.end();
        item->setText(kFlow, has ? sayMeasure(found->second.first, Quantity::Flow, units) : QString());
        item->setText(kWarmth, has ? sayMeasure(found->second.second, Quantity::Temperature, units) : QString());
    }
    m_tree->viewport()->update();
}

void OutlinePanel::findNext()
{
    m_catchUp->now();
    const int count = m_tree->topLevelItemCount();
    const auto* current = m_tree->currentItem();
    const int from = current ? m_tree->indexOfTopLevelItem(current->parent() ? current->parent()
                                                                             : const_cast<QTreeWidgetItem*>(current))
                             : -1;
    for (int step = 1; step <= count; ++step) {
        auto* item = m_tree->topLevelItem((from + step) % count);
        if (item->isHidden())
            continue;
        m_tree->setCurrentItem(item);
        m_session.requestJump(item->data(0, Qt::UserRole).toInt());
        return;
    }
}

void OutlinePanel::focusFilter()
{
    m_filter->setFocus(Qt::ShortcutFocusReason);
    m_filter->selectAll();
}

}  // namespace tapward::app
