// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/page_preview.h"

#include <algorithm>
#include <QHBoxLayout>
#include <QLabel>
#include <QPrintDialog>
#include <QPrinter>
#include <QPrintPreviewWidget>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>
#include <utility>

#include "look/spacing.h"
#include "panels/icons.h"

namespace tapward::app {

PagePreview::PagePreview(QPrinter& printer, std::function<void(QPrinter&)> paint, const QString& title, QWidget* parent)
    : QDialog(parent), m_printer(printer), m_sheets(new QPrintPreviewWidget(&printer)), m_which(new QLabel)
{
    setWindowTitle(title);
    m_sheets->setAccessibleName(title);
    auto* bar = new QHBoxLayout;
    bar->setSpacing(look::kNext);
    const auto button = [&](const char* icon, const QString& text, const QKeySequence& key, auto press) {
        auto* one = new QToolButton;
        one->setIcon(look::icon(QString::fromLatin1(icon)));
        one->setText(text);
        one->setAccessibleName(text);
        one->setToolTip(key.isEmpty() ? text : tr("%1 (%2)").arg(text, key.toString(QKeySequence::NativeText)));
        one->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
        one->setAutoRaise(true);
        one->setFocusPolicy(Qt::TabFocus);
        one->setShortcut(key);
        one->setMinimumHeight(24);
        connect(one, &QToolButton::clicked, this, press);
        bar->addWidget(one);
        return one;
    };
    button("print", tr("Print…"), QKeySequence::Print, [this] { print(); });
    bar->addSpacing(12);
    button("fit", tr("Whole Sheet"), QKeySequence(Qt::CTRL | Qt::Key_1), [this] { m_sheets->fitInView(); });
    button("zoom-out", tr("Smaller"), QKeySequence::ZoomOut, [this] { m_sheets->zoomOut(); });
    button("zoom-in", tr("Larger"), QKeySequence::ZoomIn, [this] { m_sheets->zoomIn(); });
    bar->addStretch();
    m_back = button("step-back", tr("Back"), QKeySequence(Qt::Key_PageUp), [this] { turn(-1); });
    bar->addWidget(m_which);
    m_on = button("step-forward", tr("Next"), QKeySequence(Qt::Key_PageDown), [this] { turn(1); });
    bar->addStretch();
    auto* close = new QPushButton(tr("Close"));
    close->setAutoDefault(false);
    connect(close, &QPushButton::clicked, this, &QDialog::close);
    bar->addWidget(close);

    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(look::kNext, look::kNext, look::kNext, look::kNext);
    all->addLayout(bar);
    all->addWidget(m_sheets, 1);
    connect(m_sheets, &QPrintPreviewWidget::paintRequested, this,
            [paint = std::move(paint)](QPrinter* device) { paint(*device); });
    connect(m_sheets, &QPrintPreviewWidget::previewChanged, this, &PagePreview::refresh);
    m_sheets->fitInView();
    if (parent != nullptr)
        resize(parent->window()->size() * 0.9);
    refresh();
}

void PagePreview::turn(int by)
{
    m_sheets->setCurrentPage(std::clamp(m_sheets->currentPage() + by, 1, std::max(1, m_sheets->pageCount())));
    refresh();
}

void PagePreview::refresh()
{
    const int all = std::max(1, m_sheets->pageCount()), at = std::clamp(m_sheets->currentPage(), 1, all);
    m_which->setText(tr("Sheet %1 of %2").arg(at).arg(all));
    m_back->setEnabled(at > 1);
    m_on->setEnabled(at < all);
}

void PagePreview::print()
{
    QPrintDialog dialog(&m_printer, this);
    dialog.setWindowTitle(windowTitle());
    if (dialog.exec() != QDialog::Accepted)
        return;
    m_sheets->print();
    accept();
}

}  // namespace tapward::app
