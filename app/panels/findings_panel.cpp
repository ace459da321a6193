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

#include "panels/icons.h"
#include "panels/say.h"

namespace tapward::app {

FindingsPanel::FindingsPanel(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_list(new QListWidget), m_detail(new QLabel), m_empty(new QLabel),
      m_jump(new QPushButton(tr("Show on Drawing"))), m_fix(new QPushButton(tr("Quick Fix"))),
      m_dismiss(new QPushButton(tr("Set Aside\u2026"))), m_restore(new QPushButton(tr("Take Back")))
{
    setAccessibleName(tr("Findings"));
    m_list->setAccessibleName(tr("List of findings"));
    m_list->setWordWrap(true);
    m_list->setResizeMode(QListView::Adjust);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_detail->setWordWrap(true);
    m_detail->setTextFormat(Qt::PlainText);
    m_detail->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_detail->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_detail->setContentsMargins(8, 4, 8, 4);
    m_empty->setWordWrap(true);
    m_empty->setContentsMargins(10, 8, 10, 8);
    m_dismiss->setToolTip(tr("Keep the finding out of the count, with your reason; the reason is saved and printed"));

    auto* detail = new QScrollArea;
    m_detailArea = detail;
    detail->setWidgetResizable(true);
    detail->setFrameShape(QFrame::NoFrame);
    detail->setWidget(m_detail);
    detail->setFocusPolicy(Qt::NoFocus);
    auto* buttons = new QHBoxLayout;
    buttons->setContentsMargins(8, 0, 8, 6);
    buttons->addWidget(m_jump);
    buttons->addWidget(m_fix);
    buttons->addWidget(m_dismiss);
    buttons->addWidget(m_restore);
    buttons->addStretch();
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(2);
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
    connect(&session, &Session::predictionChanged, this, &FindingsPanel::refresh);
    connect(&session, &Session::viewChanged, this, &FindingsPanel::refresh);
    refresh();
}

int FindingsPanel::current() const
{
    const auto* item = m_list->currentItem();
    return item ? item->data(Qt::UserRole).toInt() : -1;
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
    std::string rule;
    document::PartId part = document::kNoPart;
    if (const auto* item = m_list->currentItem()) {
        rule = item->data(Qt::UserRole + 1).toString().toStdString();
        part = item->data(Qt::UserRole + 2).toInt();
    }
    const QSignalBlocker quiet(m_list);
    m_list->clear();
    int chosen = -1;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const auto& finding = findings[i];
        auto* item = new QListWidgetItem(m_list);
        const QString tag = sayTag(m_session.drawing(), finding.part);
        QString line =
            tr("%1: %2").arg(look::severityWord(finding.severity), sayMessage(finding.what, m_session.units()));
        if (!tag.isEmpty())
            line = QStringLiteral("%1 \u2013 %2").arg(tag, line);
        if (finding.dismissed)
            line = tr("Set aside. %1").arg(line);
        item->setText(line);
        item->setIcon(look::severityIcon(finding.severity));
        item->setData(Qt::UserRole, static_cast<int>(i));
        item->setData(Qt::UserRole + 1, plain(finding.rule));
        item->setData(Qt::UserRole + 2, finding.part);
        if (finding.dismissed)
            item->setForeground(palette().color(QPalette::Disabled, QPalette::Text));
        if (finding.rule == rule && finding.part == part)
            chosen = m_list->row(item);
    }
    if (chosen >= 0)
        m_list->setCurrentRow(chosen);
    const bool stale = m_session.isStale();
    m_list->setEnabled(!stale);
    m_empty->setVisible(findings.empty() || stale);
    m_empty->setText(stale ? tr("Recalculating\u2026") : tr("Nothing found. The checks run again after each change."));
    m_list->setVisible(!findings.empty());
    showDetail();
    Q_EMIT countChanged();
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
        lines << tr("Seen in case: %1").arg(plain(finding.caseName));
    if (!finding.source.empty())
        lines << tr("Basis: %1").arg(say(finding.source));
    if (finding.dismissed)
        lines << tr("Set aside because: %1").arg(plain(finding.dismissReason));
    return lines.join(QLatin1Char('\n'));
}

void FindingsPanel::showDetail()
{
    const int at = current();
    const bool any = at >= 0 && at < static_cast<int>(m_session.findings().size());
    const auto* finding = any ? &m_session.findings()[static_cast<std::size_t>(at)] : nullptr;
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
    const int at = current();
    if (at < 0 || at >= static_cast<int>(m_session.findings().size()))
        return;
    const auto finding = m_session.findings()[static_cast<std::size_t>(at)];
    if (!finding.caseName.empty() && m_session.drawing().findCase(finding.caseName))
        m_session.setCaseName(plain(finding.caseName));
    if (finding.part == document::kNoPart || !m_session.drawing().find(finding.part))
        return;
    m_session.select({finding.part});
    m_session.requestJump(finding.part);
}

void FindingsPanel::step(int direction)
{
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
    const int at = current();
    if (at < 0 || reason.trimmed().isEmpty())
        return;
    const auto finding = m_session.findings()[static_cast<std::size_t>(at)];
    auto dismissals = m_session.drawing().dismissals;
    document::Dismissal dismissal;
    dismissal.rule = finding.rule;
    dismissal.part = finding.part;
    dismissal.reason = reason.trimmed().toStdString();
    dismissals.push_back(std::move(dismissal));
    const auto refused = m_session.perform(
        document::Edit{Message("Set finding aside"), {document::SetDismissals{std::move(dismissals)}}});
    if (refused)
        m_detail->setText(sayProblem(*refused, m_session.units()));
}

void FindingsPanel::fixCurrent()
{
    const int at = current();
    if (at < 0 || at >= static_cast<int>(m_session.findings().size()) || m_session.isStale())
        return;
    const auto fix = m_session.findings()[static_cast<std::size_t>(at)].fix;  // a copy: performing drops the list
    if (!fix)
        return;
    if (const auto refused = m_session.perform(*fix))
        m_detail->setText(sayProblem(*refused, m_session.units()));
}

void FindingsPanel::takeBack()
{
    const int at = current();
    if (at < 0)
        return;
    const auto finding = m_session.findings()[static_cast<std::size_t>(at)];
    auto dismissals = m_session.drawing().dismissals;
    std::erase_if(dismissals, [&](const auto& d) { return d.rule == finding.rule && d.part == finding.part; });
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
    if (event->type() == QEvent::PaletteChange)
        refresh();
}

}  // namespace tapward::app
