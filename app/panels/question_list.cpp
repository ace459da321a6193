// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/question_list.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QScrollBar>
#include <QSignalBlocker>

#include "look/spacing.h"

namespace tapward::app {

QuestionList::QuestionList(QWidget* parent) : QWidget(parent), m_list(new QListWidget), m_pages(new QStackedWidget)
{
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setFrameShape(QFrame::NoFrame);
    setFocusProxy(m_list);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look::kNext);
    row->addWidget(m_list);
    row->addWidget(m_pages, 1);
    connect(m_list, &QListWidget::currentRowChanged, this, [this](int at) {
        m_pages->setCurrentIndex(at);
        Q_EMIT currentChanged(at);
    });
}

void QuestionList::insertPage(int at, QWidget* page, const QString& title)
{
    auto* item = new QListWidgetItem(title);
    item->setSizeHint(QSize(0, std::max(24, fontMetrics().height() + 12)));
    {
        const QSignalBlocker quiet(m_list);  // the page is not there yet
        m_list->insertItem(at, item);
    }
    m_pages->insertWidget(at, page);
    if (m_list->currentRow() < 0)
        m_list->setCurrentRow(at);
    fitList();
}

void QuestionList::removePage(int at)
{
    m_pages->removeWidget(m_pages->widget(at));
    {
        const QSignalBlocker quiet(m_list);
        delete m_list->takeItem(at);
    }
    m_pages->setCurrentIndex(m_list->currentRow());
    Q_EMIT currentChanged(m_list->currentRow());
    fitList();
}

void QuestionList::setMark(int at, const QIcon& mark, const QString& words)
{
    QListWidgetItem* item = m_list->item(at);
    item->setIcon(mark);
    item->setToolTip(words.isEmpty() ? item->text() : words);
    item->setData(Qt::AccessibleDescriptionRole, words);
}

void QuestionList::fitList()
{
    int most = 0;
    for (int i = 0; i < m_list->count(); ++i)
        most = std::max(most, fontMetrics().horizontalAdvance(m_list->item(i)->text()));
    m_list->setFixedWidth(most + fontMetrics().height() * 3);
}

void QuestionList::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        fitList();
}

}  // namespace tapward::app
