// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/kind_picker.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QListWidget>
#include <QScreen>
#include <QVBoxLayout>

#include "look/kind_text.h"
#include "look/spacing.h"
#include "look/symbols.h"
#include "look/theme.h"

namespace tapward::app {

KindPicker::KindPicker(QWidget* parent) : QWidget(parent, Qt::Popup), m_search(new QLineEdit), m_list(new QListWidget)
{
    setAttribute(Qt::WA_DeleteOnClose);
    setAccessibleName(tr("Insert a part"));
    m_search->setPlaceholderText(tr("Part to insert"));
    m_search->setAccessibleName(tr("Search parts"));
    m_list->setAccessibleName(tr("Parts"));
    m_list->setIconSize({28, 28});
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(look::kNext, look::kNext, look::kNext, look::kNext);
    column->addWidget(m_search);
    column->addWidget(m_list);
    const Theme theme = Theme::of(palette());
    for (const auto* kind : parts::catalogue()) {
        auto* item = new QListWidgetItem(symbolIcon(kind->id, theme.ink, theme.paper), kindTitle(*kind), m_list);
        item->setData(Qt::UserRole, kindId(*kind));
        item->setData(Qt::UserRole + 1, kindSearchText(*kind));
    }
    m_search->installEventFilter(this);
    connect(m_search, &QLineEdit::textChanged, this, &KindPicker::filter);
    connect(m_list, &QListWidget::itemClicked, this, &KindPicker::choose);
    connect(m_list, &QListWidget::itemActivated, this, &KindPicker::choose);
    filter({});
    resize(280, 340);
}

void KindPicker::popup(const QPoint& global)
{
    QPoint at = global;
    if (const auto* screen = QApplication::screenAt(global)) {
        const QRect room = screen->availableGeometry();
        at.setX(qBound(room.left(), at.x(), qMax(room.left(), room.right() - width())));
        at.setY(qBound(room.top(), at.y(), qMax(room.top(), room.bottom() - height())));
    }
    move(at);
    show();
    m_search->setFocus();
}

bool KindPicker::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_search && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        switch (key->key()) {
        case Qt::Key_Up:
        case Qt::Key_Down:
        case Qt::Key_PageUp:
        case Qt::Key_PageDown:
            QApplication::sendEvent(m_list, event);
            return true;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            choose();
            return true;
        default:
            break;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void KindPicker::filter(const QString& words)
{
    QListWidgetItem* first = nullptr;
    for (int i = 0; i < m_list->count(); ++i) {
        auto* item = m_list->item(i);
        const bool fits = matchesWords(item->data(Qt::UserRole + 1).toString(), words);
        item->setHidden(!fits);
        if (fits && first == nullptr)
            first = item;
    }
    m_list->setCurrentItem(first);
}

void KindPicker::choose()
{
    const auto* item = m_list->currentItem();
    if (item == nullptr || item->isHidden())
        return;
    const QString kind = item->data(Qt::UserRole).toString();
    close();
    Q_EMIT chosen(kind);
}

}  // namespace tapward::app
