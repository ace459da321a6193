// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/findings_panel.h"

#include <algorithm>
#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QHBoxLayout>
#include <QInputDialog>
#include <QLabel>
#include <QListWidget>
#include <QMenu>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/catch_up.h"
#include "panels/icons.h"
#include "panels/say.h"

namespace tapward::app {

FindingsPanel::FindingsPanel(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_list(new QListWidget), m_detail(new QLabel), m_empty(new QLabel),
      m_jump(new QPushButton(tr("Show on Drawing"))), m_fix(new QPushButton(tr("Quick Fix"))),
      m_dismiss(new QPushButton(tr("Set Aside\u2026"))), m_restore(new QPushButton(tr("Take Back"))),
      m_catchUp(new CatchUp(*this, [this] { refresh(); }))
{
    setAccessibleName(tr("Findings"));
    m_list->setAccessibleName(tr("List of findings"));
    m_list->setWordWrap(true);
    m_list->setResizeMode(QListView::Adjust);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_detail->setWordWrap(true);
    m_detail->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_detail->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_detail->setContentsMargins(look::kNext, look::kNear, look::kNext, look::kNear);
    m_empty->setWordWrap(true);
    m_empty->setContentsMargins(look::kNext, look::kNext, look::kNext, look::kNext);
    m_dismiss->setToolTip(tr("Keep the finding out of the count, with your reason; the reason is saved and printed"));

    auto* detail = new QScrollArea;
    m_detailArea = detail;
    detail->setWidgetResizable(true);
    detail->setFrameShape(QFrame::NoFrame);
    detail->setWidget(m_detail);
    detail->setFocusPolicy(Qt::NoFocus);
    auto* buttons = new QHBoxLayout;
    buttons->setContentsMargins(look::kNext, 0, look::kNext, look::kNext);
    buttons->addWidget(m_jump);
    buttons->addWidget(m_fix);
    buttons->addWidget(m_dismiss);
    buttons->addWidget(m_restore);
    buttons->addStretch();
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(look::kNear);
    all->addWidget(m_empty);
    all->addWidget(m_list, 3);
    all->addWidget(detail, 2);
    all->addLayout(buttons);

    connect(m_list, &QListWidget::currentRowChanged, this, [this] { showDetail(); });
    connect(m_list, &QListWidget::itemActivated, this, [this] { jump(); });
    connect(m_list, &QListWidget::itemClicked, this, [this] { jump(); });
    connect(m_jump, &QPushButton::clicked, this, &FindingsPanel::jump);
    connect(m_fix, &QPushButton::clicked, this, &FindingsPanel::fixCurrent);
    connect(m_dismiss, &QPushButton::clicked, this, &FindingsPanel::askDismiss);
    connect(m_restore, &QPushButton::clicked, this, &FindingsPanel::takeBack);
    for (const auto signal : {&Session::predictionChanged, &Session::viewChanged})
        connect(&session, signal, m_catchUp, &CatchUp::later);
    refresh();
}

namespace {
enum Role { kIndex = Qt::UserRole, kRule, kPart, kSeverity };
}

int FindingsPanel::current() const
{
    m_catchUp->now();
    const auto* item = m_list->currentItem();
    return item ? item->data(kIndex).toInt() : -1;
}

/// What the chosen row stands for, also while the list is behind the session; null when that is gone.
const review::Finding* FindingsPanel::chosen() const
{
    const auto* item = m_list->currentItem();
    if (!item)
        return nullptr;
    const auto& all = m_session.findings();
    const auto isIt = [rule = item->data(kRule).toString().toStdString(), part = item->data(kPart).toInt()](
                          const review::Finding& finding) { return finding.rule == rule && finding.part == part; };
    if (const auto at = item->data(kIndex).toULongLong(); at < all.size() && isIt(all[at]))
        return &all[at];
    const auto found = std::ranges::find_if(all, isIt);
    return found == all.end() ? nullptr : &*found;
}

int FindingsPanel::openCount() const
{
    return static_cast<int>(std::ranges::count(m_session.findings(), false, &review::Finding::dismissed));
}

QString FindingsPanel::summary() const
{
    int counts[3] = {};
    for (const auto& finding : m_session.findings())
        if (!finding.dismissed)
            ++counts[static_cast<int>(finding.severity)];
    QStringList parts;
    if (const int n = counts[static_cast<int>(review::Severity::Danger)])
        parts << (n == 1 ? tr("1 danger") : tr("%1 dangers").arg(n));
    if (const int n = counts[static_cast<int>(review::Severity::Caution)])
        parts << (n == 1 ? tr("1 caution") : tr("%1 cautions").arg(n));
    if (const int n = counts[static_cast<int>(review::Severity::Note)])
        parts << (n == 1 ? tr("1 note") : tr("%1 notes").arg(n));
    return parts.isEmpty() ? tr("No findings") : parts.join(QStringLiteral(", "));
}

void FindingsPanel::refresh()
{
    const auto& findings = m_session.findings();
    const QSignalBlocker quiet(m_list);
    fillList();
    const bool stale = m_session.isStale();
    m_list->setEnabled(!stale);
    m_empty->setVisible(findings.empty() || stale);
    m_empty->setText(stale ? tr("Recalculating\u2026") : tr("Nothing found. The checks run again after each change."));
    m_list->setVisible(!findings.empty());
    showDetail();
    Q_EMIT countChanged();
}

void FindingsPanel::fillList()
{
    const auto& findings = m_session.findings();
    std::string rule;
    document::PartId part = document::kNoPart;
    if (const auto* item = m_list->currentItem()) {
        rule = item->data(kRule).toString().toStdString();
        part = item->data(kPart).toInt();
    }
    // Rows that say the same as before are left alone: a list lays all its rows out again when one changes.
    while (m_list->count() > static_cast<int>(findings.size()))
        delete m_list->takeItem(m_list->count() - 1);
    int chosen = -1;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const auto& finding = findings[i];
        const int row = static_cast<int>(i);
        auto* item = row < m_list->count() ? m_list->item(row) : new QListWidgetItem(m_list);
        const QString tag = sayTag(m_session.drawing(), finding.part);
        QString line =
            tr("%1: %2").arg(look::severityWord(finding.severity), sayMessage(finding.what, m_session.units()));
        if (!tag.isEmpty())
            line = QStringLiteral("%1 \u2013 %2").arg(tag, line);
        if (finding.dismissed)
            line = tr("Set aside. %1").arg(line);
        item->setText(line);
        if (item->data(kSeverity) != QVariant(static_cast<int>(finding.severity)))
            item->setIcon(look::severityIcon(finding.severity));
        item->setData(kSeverity, static_cast<int>(finding.severity));
        item->setData(kIndex, row);
        item->setData(kRule, plain(finding.rule));
        item->setData(kPart, finding.part);
        item->setData(Qt::ForegroundRole, finding.dismissed
                                              ? QVariant(QBrush(palette().color(QPalette::Disabled, QPalette::Text)))
                                              : QVariant());
        if (finding.rule == rule && finding.part == part)
            chosen = row;
    }
    m_list->setCurrentRow(chosen);
}

QString FindingsPanel::text(const review::Finding& finding) const
{
    const UnitSystem units = m_session.units();
    QStringList lines{tr("%1: %2").arg(look::severityWord(finding.severity), sayMessage(finding.what, units))};
    if (!finding.why.empty())
        lines << tr("Why: %1").arg(sayMessage(finding.why, units));
    if (!finding.remedy.empty())
        lines << tr("What to do: %1").arg(sayMessage(finding.remedy, units));
    if (finding.fix)
        lines << tr("Quick fix: %1").arg(sayMessage(finding.fix->title, units));
    if (!finding.caseName.empty())
        lines << (finding.script ? tr("Found by the search: %1") : tr("Seen in case: %1")).arg(plain(finding.caseName));
    if (!finding.source.empty())
        lines << tr("Basis: %1").arg(say(finding.source));
    if (finding.dismissed)
        lines << tr("Set aside because: %1").arg(plain(finding.dismissReason));
    return lines.join(QLatin1Char('\n'));
}

void FindingsPanel::showDetail()
{
    const auto* finding = chosen();
    m_detail->setText(finding ? text(*finding) : QString());
    m_detailArea->setVisible(finding != nullptr);
    m_jump->setEnabled(finding && finding->part != document::kNoPart);
    const bool fixable = finding && finding->fix && !finding->dismissed && !m_session.isStale();
    m_fix->setVisible(fixable);
    m_fix->setToolTip(fixable ? sayMessage(finding->fix->title, m_session.units()) : QString());
    m_fix->setAccessibleDescription(m_fix->toolTip());
    m_dismiss->setVisible(!finding || !finding->dismissed);
    m_dismiss->setEnabled(finding != nullptr);
    m_restore->setVisible(finding && finding->dismissed);
}

void FindingsPanel::jump()
{
    const auto* picked = chosen();
    if (!picked)
        return;
    const review::Finding finding = *picked;  // choosing a case may drop the list
    if (finding.script)
        m_session.play(*finding.script);
    else if (!finding.caseName.empty() && m_session.drawing().findCase(finding.caseName))
        m_session.setCaseName(plain(finding.caseName));
    if (finding.part == document::kNoPart || !m_session.drawing().find(finding.part))
        return;
    m_session.select({finding.part});
    m_session.requestJump(finding.part);
}

void FindingsPanel::step(int direction)
{
    m_catchUp->now();
    const auto& findings = m_session.findings();
    const int count = static_cast<int>(findings.size());
    if (openCount() == 0)
        return;
    int at = current();
    if (at < 0)
        at = direction > 0 ? -1 : count;
    do
        at = (at + direction + count) % count;
    while (findings[static_cast<std::size_t>(at)].dismissed);
    m_list->setCurrentRow(at);
    m_list->scrollToItem(m_list->currentItem());
    jump();
}

void FindingsPanel::askDismiss()
{
    QInputDialog dialog(this);
    dialog.setWindowTitle(tr("Set Finding Aside"));
    dialog.setLabelText(tr("Why does this not matter here? The reason is saved with the drawing and printed."));
    dialog.setOkButtonText(tr("Set Aside"));
    dialog.setCancelButtonText(tr("Cancel"));
    if (dialog.exec() == QDialog::Accepted)
        dismissCurrent(dialog.textValue());
}

void FindingsPanel::dismissCurrent(const QString& reason)
{
    m_catchUp->now();
    const auto* finding = chosen();
    if (!finding || reason.trimmed().isEmpty())
        return;
    auto dismissals = m_session.drawing().dismissals;
    document::Dismissal dismissal;
    dismissal.rule = finding->rule;
    dismissal.part = finding->part;
    dismissal.reason = reason.trimmed().toStdString();
    dismissals.push_back(std::move(dismissal));
    const auto refused = m_session.perform(
        document::Edit{Message("Set finding aside"), {document::SetDismissals{std::move(dismissals)}}});
    if (refused)
        m_detail->setText(sayProblem(*refused, m_session.units()));
}

void FindingsPanel::fixCurrent()
{
    m_catchUp->now();
    const auto* finding = chosen();
    if (!finding || m_session.isStale())
        return;
    const auto fix = finding->fix;  // a copy: performing drops the list
    if (!fix)
        return;
    if (const auto refused = m_session.perform(*fix))
        m_detail->setText(sayProblem(*refused, m_session.units()));
}

void FindingsPanel::takeBack()
{
    m_catchUp->now();
    const auto* finding = chosen();
    if (!finding)
        return;
    auto dismissals = m_session.drawing().dismissals;
    std::erase_if(dismissals, [&](const auto& d) { return d.rule == finding->rule && d.part == finding->part; });
    m_session.perform(document::Edit{Message("Take finding back"), {document::SetDismissals{std::move(dismissals)}}});
}

void FindingsPanel::contextMenuEvent(QContextMenuEvent* event)
{
    QMenu menu;
    menu.addAction(look::icon(QStringLiteral("copy")), tr("Copy Findings as Text"), this, [this] {
        QStringList all;
        for (const auto& finding : m_session.findings())
            all << text(finding);
        QApplication::clipboard()->setText(all.join(QStringLiteral("\n\n")));
    });
    menu.exec(event->globalPos());
}

void FindingsPanel::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        const QSignalBlocker quiet(m_list);
        for (int row = 0; row < m_list->count(); ++row)
            m_list->item(row)->setData(kSeverity, {});  // its icon is of the old colours
        m_catchUp->later();
    }
}

}  // namespace tapward::app
