// SPDX-License-Identifier: GPL-3.0-or-later
#include "tray/tray.h"

#include <map>
#include <QApplication>
#include <QDrag>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMimeData>
#include <QSplitter>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "look/kind_text.h"
#include "look/spacing.h"
#include "look/symbols.h"
#include "look/theme.h"
#include "session/mime_types.h"
#include "tray/assembly_list.h"

namespace tapward::app {

namespace {

constexpr int kKind = Qt::UserRole, kSearch = Qt::UserRole + 1;

/// The list with its own drag: the kind's id, and the symbol under the pointer.
class PartList final : public QTreeWidget {
public:
    using QTreeWidget::QTreeWidget;

protected:
    void resizeEvent(QResizeEvent* event) override
    {
        QTreeWidget::resizeEvent(event);
        fitRows(*this);
    }
    void startDrag(Qt::DropActions) override
    {
        const auto* item = currentItem();
        if (item == nullptr || item->data(0, kKind).toString().isEmpty())
            return;
        auto* mime = new QMimeData;
        mime->setData(QLatin1String(kKindMime), item->data(0, kKind).toString().toUtf8());
        auto* drag = new QDrag(this);
        drag->setMimeData(mime);
        const double ratio = devicePixelRatioF();
        QPixmap picture = item->icon(0).pixmap(QSize(40, 40) * ratio);
        picture.setDevicePixelRatio(ratio);
        drag->setPixmap(picture);
        drag->setHotSpot({20, 20});
        drag->exec(Qt::CopyAction);
    }
};

}  // namespace

Tray::Tray(QWidget* parent)
    : QWidget(parent), m_search(new QLineEdit), m_list(new PartList), m_assemblies(new AssemblyList)
{
    setAccessibleName(tr("Parts"));
    m_search->setPlaceholderText(tr("Search parts"));
    m_search->setAccessibleName(tr("Search parts"));
    m_search->setClearButtonEnabled(true);
    m_search->installEventFilter(this);
    m_list->setAccessibleName(tr("Parts to place"));
    m_list->setAccessibleDescription(tr("Drag a part onto the canvas, or press Enter and click on the canvas."));
    m_list->setHeaderHidden(true);
    m_list->setRootIsDecorated(false);
    m_list->setIndentation(4);
    m_list->setIconSize({32, 32});
    m_list->setDragEnabled(true);
    m_list->setDragDropMode(QAbstractItemView::DragOnly);
    m_list->setUniformRowHeights(false);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setTextElideMode(Qt::ElideRight);
    m_list->setWordWrap(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(look::kNear, look::kNear, look::kNear, look::kNear);
    column->setSpacing(look::kNear);
    column->addWidget(m_search);
    auto* both = new QSplitter(Qt::Vertical);
    both->setChildrenCollapsible(false);
    both->addWidget(m_list);
    both->addWidget(m_assemblies);
    both->setStretchFactor(0, 3);
    both->setStretchFactor(1, 2);
    column->addWidget(both);
    setTabOrder(m_search, m_list);
    setTabOrder(m_list, m_assemblies);
    setMinimumWidth(160);
    connect(m_search, &QLineEdit::textChanged, this, &Tray::filter);
    onPicked(*m_list, [this](QTreeWidgetItem* item) { pick(item); });
    fill();
}

void Tray::fill()
{
    const QString kept =
        m_list->currentItem() != nullptr ? m_list->currentItem()->data(0, kKind).toString() : QString();
    m_list->clear();
    const Theme theme = Theme::of(palette());
    std::map<parts::TrayGroup, QTreeWidgetItem*> groups;
    for (const auto* kind : parts::catalogue()) {
        auto*& group = groups[kind->group];
        if (group == nullptr) {
            group = new QTreeWidgetItem(m_list, {groupTitle(kind->group)});
            group->setFlags(Qt::ItemIsEnabled);
            group->setFont(0, look::strongFont(font()));
        }
        auto* item = new QTreeWidgetItem(group, {kindTitle(*kind)});
        item->setIcon(0, symbolIcon(kind->id, theme.ink, theme.paper));
        item->setData(0, kKind, kindId(*kind));
        item->setData(0, kSearch, kindSearchText(*kind));
        item->setToolTip(0, tr("%1: click, then click on the canvas; or drag it there.").arg(kindTitle(*kind)));
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsDragEnabled | Qt::ItemNeverHasChildren);
        if (kindId(*kind) == kept)
            m_list->setCurrentItem(item);
    }
    m_list->expandAll();
    fitRows(*m_list);
    filter(m_search->text());
}

void Tray::filter(const QString& words)
{
    m_assemblies->filter(words);
    QTreeWidgetItem* first = nullptr;
    for (int g = 0; g < m_list->topLevelItemCount(); ++g) {
        auto* group = m_list->topLevelItem(g);
        bool any = false;
        for (int i = 0; i < group->childCount(); ++i) {
            auto* item = group->child(i);
            const bool fits = matchesWords(item->data(0, kSearch).toString(), words);
            item->setHidden(!fits);
            any |= fits;
            if (fits && first == nullptr)
                first = item;
        }
        group->setHidden(!any);
    }
    // Nothing is chosen before somebody chooses: what looks chosen would seem to be in hand.
    if (!words.isEmpty())
        m_list->setCurrentItem(first);
}

void Tray::layDown()
{
    m_list->clearSelection();
    m_assemblies->clearSelection();
}

void Tray::pick(QTreeWidgetItem* item)
{
    if (item != nullptr && !item->data(0, kKind).toString().isEmpty())
        Q_EMIT kindPicked(item->data(0, kKind).toString());
}

bool Tray::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_search && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Down || key->key() == Qt::Key_Up) {
            QApplication::sendEvent(m_list, event);
            return true;
        }
        if (key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter) {
            pick(m_list->currentItem());
            return true;
        }
        if (key->key() == Qt::Key_Escape && !m_search->text().isEmpty()) {
            m_search->clear();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void Tray::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange)
        fill();
}

}  // namespace tapward::app
