// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/warm_up_chart.h"
#include "panels/flow_layout.h"

#include <cmath>
#include <QAction>
#include <QApplication>
#include <QButtonGroup>
#include <QCheckBox>
#include <QClipboard>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPainter>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableView>
#include <QToolButton>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "document/cell_block.h"
#include "look/spacing.h"
#include "panels/catch_up.h"
#include "panels/chart_view.h"
#include "panels/choice_button.h"
#include "panels/icons.h"
#include "panels/say.h"
#include "panels/series_table.h"
#include "report/report.h"

namespace tapward::app {

namespace {

QToolButton* switchButton(const QString& text, QButtonGroup* group)
{
    auto* button = new ChoiceButton;
    button->setText(text);
    button->setCheckable(true);
    button->setAccessibleName(text);
    if (group)
        group->addButton(button);
    return button;
}

/// A sample of a line's pen, for its row in the list.
QIcon penIcon(const QPen& pen, const QFontMetrics& metrics)
{
    QPixmap picture(QSize(metrics.height() * 2, metrics.height()) * 2);
    picture.setDevicePixelRatio(2);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(pen);
    painter.drawLine(QPointF(0, metrics.height() / 2.0), QPointF(metrics.height() * 2, metrics.height() / 2.0));
    return QIcon(picture);
}

}  // namespace

WarmUpChart::WarmUpChart(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_view(new ChartView), m_lines(new QTreeWidget), m_at(new QLabel),
      m_state(new QLabel), m_fire(new QCheckBox(tr("Burner fire"))), m_stack(new QStackedWidget),
      m_table(new QTableView), m_model(new SeriesTable(this)), m_catchUp(new CatchUp(*this, [this] { refresh(); }))
{
    setAccessibleName(tr("Warm-up"));
    auto* axis = new QButtonGroup(this);
    m_byTime = switchButton(tr("By Time"), axis);
    m_byVolume = switchButton(tr("By Volume"), axis);
    m_byTime->setChecked(true);
    m_asTable = switchButton(tr("Table"), nullptr);
    m_asTable->setToolTip(tr("Show the same figures as a table"));
    m_export = new QToolButton;
    m_export->setText(tr("Export CSV\u2026"));
    m_export->setAccessibleName(tr("Export warm-up as CSV"));

    auto* bar = new FlowLayout;
    bar->setContentsMargins(look::kNext, look::kNear, look::kNext, 0);
    bar->setSpacing(look::kNear);
    bar->addWidget(m_byTime);
    bar->addWidget(m_byVolume);
    bar->addWidget(m_fire);
    bar->addWidget(m_state);
    bar->addWidget(m_asTable);
    bar->addWidget(m_export);

    m_lines->setColumnCount(2);
    m_lines->setHeaderHidden(true);
    m_lines->setRootIsDecorated(false);
    m_lines->setAccessibleName(tr("Lines and their values at the crosshair"));
    m_lines->setFrameShape(QFrame::NoFrame);
    m_lines->setSelectionMode(QAbstractItemView::NoSelection);
    m_lines->setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    m_lines->header()->setStretchLastSection(false);
    m_lines->header()->setSectionResizeMode(0, QHeaderView::Stretch);
    m_lines->header()->setSectionResizeMode(1, QHeaderView::ResizeToContents);
    m_lines->setIconSize(QSize(fontMetrics().height() * 2, fontMetrics().height()));
    m_at->setContentsMargins(look::kNext, look::kNear, look::kNext, look::kNear);
    m_at->setWordWrap(true);
    auto* side = new QWidget;
    auto* sideColumn = new QVBoxLayout(side);
    sideColumn->setContentsMargins(0, 0, 0, 0);
    sideColumn->setSpacing(0);
    sideColumn->addWidget(m_at);
    sideColumn->addWidget(m_lines, 1);
    side->setMinimumWidth(fontMetrics().averageCharWidth() * 38);

    auto* split = new QSplitter;
    split->addWidget(m_view);
    split->addWidget(side);
    split->setStretchFactor(0, 1);
    split->setStretchFactor(1, 0);
    split->setChildrenCollapsible(false);
    split->setSizes({1000, side->minimumWidth()});
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Warm-up table"));
    m_table->setAlternatingRowColors(true);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
    auto* copy = new QAction(tr("Copy"), m_table);
    copy->setShortcut(QKeySequence::Copy);
    copy->setShortcutContext(Qt::WidgetShortcut);
    m_table->addAction(copy);
    m_table->setContextMenuPolicy(Qt::ActionsContextMenu);
    connect(copy, &QAction::triggered, this, &WarmUpChart::copyTable);
    m_stack->addWidget(split);
    m_stack->addWidget(m_table);

    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(look::kNear);
    all->addLayout(bar);
    all->addWidget(m_stack, 1);

    connect(m_byTime, &QToolButton::toggled, this, &WarmUpChart::refresh);
    connect(m_fire, &QCheckBox::toggled, this, &WarmUpChart::refresh);
    connect(m_asTable, &QToolButton::toggled, this, [this](bool on) { m_stack->setCurrentIndex(on ? 1 : 0); });
    connect(m_export, &QToolButton::clicked, this, &WarmUpChart::exportRequested);
    connect(m_view, &ChartView::crosshairMoved, this, &WarmUpChart::refreshReadout);
    connect(m_view, &ChartView::timePicked, &session, &Session::setTime);
    connect(m_lines, &QTreeWidget::itemChanged, this, [this](QTreeWidgetItem* item) {
        if (m_filling)
            return;
        const std::string id = item->data(0, Qt::UserRole).toString().toStdString();
        if (item->checkState(0) == Qt::Checked)
            m_hidden.erase(id);
        else
            m_hidden.insert(id);
        QMetaObject::invokeMethod(this, [this] { refresh(); }, Qt::QueuedConnection);
    });
    for (const auto signal : {&Session::predictionChanged, &Session::caseChanged, &Session::viewChanged})
        connect(&session, signal, m_catchUp, &CatchUp::later);
    connect(&session, &Session::timeChanged, this, [this] { m_view->setTime(m_session.time()); });
    refresh();
}

void WarmUpChart::refresh()
{
    const study::CaseResult* result = m_session.currentCase();
    const bool answered = result && !result->noAnswer && !result->time_s.empty();
    const bool stale = m_session.isStale();
    m_byVolume->setEnabled(answered && !chartX(*result, ChartAxis::Volume, m_session.units()).empty());
    m_byVolume->setToolTip(m_byVolume->isEnabled() ? QString() : tr("No volume is pumped in this case"));
    m_export->setEnabled(answered);
    QString state;
    if (stale)
        state = tr("Recalculating\u2026");
    else if (result && result->noAnswer)
        state = sayProblem(*result->noAnswer, m_session.units());
    else if (!result && m_session.predictionProblem())
        state = sayProblem(*m_session.predictionProblem(), m_session.units());
    m_state->setText(state);
    m_state->setToolTip(state);
    m_lines->setEnabled(!stale);

    ChartView::Content content;
    content.keep = m_session.sharedPrediction();
    content.result = answered ? result : nullptr;
    content.axis = m_byVolume->isChecked() && m_byVolume->isEnabled() ? ChartAxis::Volume : ChartAxis::Time;
    content.units = m_session.units();
    content.intoColdLine = m_session.prediction() && m_session.prediction()->loop.coldEntry != document::kNoPart;
    content.stale = stale;
    content.fire = m_fire->isChecked();
    content.hidden = m_hidden;

    m_filling = true;
    m_lines->clear();
    if (answered) {
        for (const auto& line : chartLines(*result)) {
            auto* item = new QTreeWidgetItem(m_lines);
            item->setText(0, line.name);
            item->setToolTip(0, line.name);
            item->setData(0, Qt::UserRole, plain(line.series->id));
            item->setIcon(0, penIcon(chartPen(line.style, palette(), stale), fontMetrics()));
            item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsUserCheckable | Qt::ItemIsSelectable);
            item->setCheckState(0, m_hidden.contains(line.series->id) ? Qt::Unchecked : Qt::Checked);
            item->setTextAlignment(1, Qt::AlignRight | Qt::AlignVCenter);
        }
    }
    m_filling = false;
    m_view->show(content);
    m_view->setTime(m_session.time());
    m_model->show(content.keep, content.result, m_session.units());
    refreshReadout();
}

ChartView& WarmUpChart::view()
{
    m_catchUp->now();
    return *m_view;
}

QString WarmUpChart::readout(const std::string& seriesId) const
{
    m_catchUp->now();
    return valueOf(seriesId);
}

QString WarmUpChart::valueOf(const std::string& seriesId) const
{
    const auto* result = m_view->content().result;
    const auto* series = result ? result->find(seriesId) : nullptr;
    const std::size_t at = m_view->crosshair();
    if (!series || at >= series->values.size() || !std::isfinite(series->values[at]))
        return {};
    return sayMeasure(series->values[at], series->quantity, m_session.units());
}

void WarmUpChart::refreshReadout()
{
    const auto* result = m_view->content().result;
    if (!result) {
        m_at->clear();
        return;
    }
    const std::size_t at = m_view->crosshair();
    QStringList head{tr("At %1").arg(sayClock(result->time_s[std::min(at, result->time_s.size() - 1)]))};
    if (const QString pumped = valueOf("pumped_volume"); !pumped.isEmpty())
        head << tr("%1 pumped").arg(pumped);
    if (const QString flow = valueOf("loop_flow"); !flow.isEmpty())
        head << flow;
    m_at->setText(head.join(QStringLiteral(" \u00B7 ")));
    m_filling = true;
    for (int i = 0; i < m_lines->topLevelItemCount(); ++i) {
        auto* item = m_lines->topLevelItem(i);
        const QString value = valueOf(item->data(0, Qt::UserRole).toString().toStdString());
        item->setText(1, value.isEmpty() ? QStringLiteral("\u2013") : value);
    }
    m_filling = false;
}

QByteArray WarmUpChart::csv() const
{
    const auto* result = m_session.currentCase();
    return result ? QByteArray::fromStdString(report::seriesCsv(*result, m_session.units())) : QByteArray();
}

void WarmUpChart::copyTable()
{
    m_catchUp->now();
    QMap<int, QMap<int, std::string>> cells;
    for (const auto& index : m_table->selectionModel()->selectedIndexes())
        cells[index.row()][index.column()] = index.data().toString().toStdString();
    document::CellBlock block;
    for (const auto& row : cells)
        block.emplace_back(row.begin(), row.end());
    if (!block.empty())
        QApplication::clipboard()->setText(QString::fromStdString(document::writeCells(block)));
}

void WarmUpChart::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange)
        m_catchUp->later();
}

void WarmUpChart::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    m_view->show(ChartView::Content(m_view->content()));  // tick steps fit the new size
}

}  // namespace tapward::app
