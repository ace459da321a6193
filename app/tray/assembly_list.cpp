// SPDX-License-Identifier: GPL-3.0-or-later
#include "tray/assembly_list.h"

#include <algorithm>
#include <QContextMenuEvent>
#include <QDrag>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QMenu>
#include <QMimeData>
#include <QStyle>

#include "look/kind_text.h"
#include "look/spacing.h"
#include "look/symbols.h"
#include "look/theme.h"
#include "session/assembly_text.h"
#include "session/mime_types.h"
#include "session/own_assemblies.h"

namespace tapward::app {

namespace {

constexpr int kWhat = Qt::UserRole, kSearch = Qt::UserRole + 1;
const QString kVariant = QStringLiteral("variant:"), kOwn = QStringLiteral("own:");

QString whatOf(const QTreeWidgetItem* item) { return item != nullptr ? item->data(0, kWhat).toString() : QString(); }

}  // namespace

void onPicked(QTreeWidget& list, const std::function<void(QTreeWidgetItem*)>& pick)
{
    const auto byClick = [&list] {
        return list.style()->styleHint(QStyle::SH_ItemView_ActivateItemOnSingleClick) != 0;
    };
    QObject::connect(&list, &QTreeWidget::itemClicked, &list, [byClick, pick](QTreeWidgetItem* item) {
        if (!byClick())
            pick(item);
    });
    QObject::connect(&list, &QTreeWidget::itemActivated, &list, [byClick, pick](QTreeWidgetItem* item) {
        if (byClick() || QGuiApplication::mouseButtons() == Qt::NoButton)  // of a double click the first was enough
            pick(item);
    });
}

void fitRows(QTreeWidget& list)
{
    const int margins = 2 * list.style()->pixelMetric(QStyle::PM_FocusFrameHMargin) + 4;
    const auto fit = [&](QTreeWidgetItem& item, int room, int least) {
        const QRect words = QFontMetrics(item.font(0))
                                .boundingRect(QRect(0, 0, std::max(room, 40), 1000), Qt::TextWordWrap, item.text(0));
        item.setSizeHint(0, {0, std::max(words.height() + 4, least)});
    };
    for (int g = 0; g < list.topLevelItemCount(); ++g) {
        auto* group = list.topLevelItem(g);
        const int room = list.viewport()->width() - list.indentation() - margins;
        fit(*group, room, 0);
        for (int i = 0; i < group->childCount(); ++i)
            fit(*group->child(i), room - list.indentation() - list.iconSize().width() - margins,
                list.iconSize().height() + 2);
    }
}

AssemblyList::AssemblyList(QWidget* parent) : QTreeWidget(parent)
{
    setAccessibleName(tr("Assemblies to propose"));
    setAccessibleDescription(
        tr("Press Enter and then choose a place on the hot side and one on the cold side, or drag onto the canvas."));
    setHeaderHidden(true);
    setRootIsDecorated(false);
    setIndentation(4);
    setIconSize({32, 32});
    setDragEnabled(true);
    setDragDropMode(QAbstractItemView::DragOnly);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTextElideMode(Qt::ElideRight);
    setWordWrap(true);
    onPicked(*this, [this](QTreeWidgetItem* item) { pick(item); });
    refresh();
}

void AssemblyList::refresh()
{
    const QString kept = whatOf(currentItem());
    clear();
    const Theme theme = Theme::of(palette());
    const auto group = [this](const QString& title) {
        auto* item = new QTreeWidgetItem(this, {title});
        item->setFlags(Qt::ItemIsEnabled);
        item->setFont(0, look::strongFont(font()));
        return item;
    };
    const auto add = [&](QTreeWidgetItem* under, const QString& text, const QString& what, const QString& search,
                         const std::string& symbol, const QString& tip) {
        auto* item = new QTreeWidgetItem(under, {text});
        item->setIcon(0, symbolIcon(symbol, theme.ink, theme.paper));
        item->setData(0, kWhat, what);
        item->setData(0, kSearch, search);
        item->setData(0, Qt::AccessibleTextRole, search);
        item->setToolTip(0, tip);
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsDragEnabled | Qt::ItemNeverHasChildren);
        if (what == kept)
            setCurrentItem(item);
    };
    QTreeWidgetItem* loops = nullptr;
    for (const auto& variant : document::variants()) {
        if (variant.pumps == document::PumpSet::One)
            loops = group(tr("Loop: %1").arg(wayTitle(variant.way).toLower()));
        QString text = pumpsTitle(variant.pumps);
        text[0] = text[0].toUpper();
        add(loops, text, kVariant + toText(document::idOf(variant)), variantTitle(variant), variantSymbol(variant),
            tr("%1: click, then drag on the canvas from the hot side to the cold side.").arg(variantTitle(variant)));
    }
    const auto own = OwnAssemblies().list();
    if (!own.empty()) {
        auto* mine = group(tr("My assemblies"));
        for (const auto& one : own)
            add(mine, one.title, kOwn + one.file, one.title, "assembly_own",
                tr("%1: click, then click on the canvas; or drag it there.").arg(one.title));
    }
    expandAll();
    fitRows(*this);
    filter(m_words);
}

void AssemblyList::filter(const QString& words)
{
    m_words = words;
    for (int g = 0; g < topLevelItemCount(); ++g) {
        auto* group = topLevelItem(g);
        bool any = false;
        for (int i = 0; i < group->childCount(); ++i) {
            const bool fits = matchesWords(group->child(i)->data(0, kSearch).toString(), words);
            group->child(i)->setHidden(!fits);
            any |= fits;
        }
        group->setHidden(!any);
    }
}

void AssemblyList::resizeEvent(QResizeEvent* event)
{
    QTreeWidget::resizeEvent(event);
    fitRows(*this);
}

void AssemblyList::pick(QTreeWidgetItem* item)
{
    const QString what = whatOf(item);
    if (what.startsWith(kVariant))
        Q_EMIT variantPicked(what.mid(kVariant.size()));
    else if (what.startsWith(kOwn))
        Q_EMIT ownPicked(what.mid(kOwn.size()));
}

void AssemblyList::askDelete(QTreeWidgetItem* item)
{
    const QString what = whatOf(item);
    if (what.startsWith(kOwn))
        Q_EMIT deleteRequested(what.mid(kOwn.size()), item->text(0));
}

void AssemblyList::startDrag(Qt::DropActions)
{
    const QString what = whatOf(currentItem());
    if (what.isEmpty())
        return;
    auto* mime = new QMimeData;
    mime->setData(QLatin1String(kAssemblyMime), what.toUtf8());
    auto* drag = new QDrag(this);
    drag->setMimeData(mime);
    const double ratio = devicePixelRatioF();
    QPixmap picture = currentItem()->icon(0).pixmap(QSize(40, 40) * ratio);
    picture.setDevicePixelRatio(ratio);
    drag->setPixmap(picture);
    drag->setHotSpot({20, 20});
    drag->exec(Qt::CopyAction);
}

void AssemblyList::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        pick(currentItem());
        return;
    }
    if (event->key() == Qt::Key_Delete) {
        askDelete(currentItem());
        return;
    }
    QTreeWidget::keyPressEvent(event);
}

void AssemblyList::contextMenuEvent(QContextMenuEvent* event)
{
    auto* item = event->reason() == QContextMenuEvent::Mouse ? itemAt(event->pos()) : currentItem();
    if (whatOf(item).isEmpty())
        return;
    QMenu menu;
    menu.addAction(tr("Use This"), this, [this, item] { pick(item); });
    if (whatOf(item).startsWith(kOwn))
        menu.addAction(tr("Delete Assembly\u2026"), this, [this, item] { askDelete(item); });
    menu.exec(event->globalPos());
}

void AssemblyList::changeEvent(QEvent* event)
{
    QTreeWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange)
        refresh();
}

}  // namespace tapward::app
