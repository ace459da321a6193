// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/canvas_accessible.h"

#include <algorithm>
#include <map>
#include <QAccessible>
#include <QAccessibleWidget>
#include <QPointer>

#include "canvas/canvas_view.h"

namespace tapward::app {

namespace {

using document::PartId;

/// One part. It lives as long as the canvas's own interface and goes invalid with its part.
class PartInterface final : public QAccessibleInterface, public QAccessibleActionInterface {
public:
    PartInterface(CanvasView* view, PartId id) : m_view(view), m_id(id) {}

    bool isValid() const override { return m_view && m_view->shown().find(m_id) != nullptr; }
    QObject* object() const override { return nullptr; }
    QAccessibleInterface* parent() const override
    {
        return m_view ? QAccessible::queryAccessibleInterface(m_view.data()) : nullptr;
    }
    QAccessibleInterface* child(int) const override { return nullptr; }
    QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    int childCount() const override { return 0; }
    int indexOfChild(const QAccessibleInterface*) const override { return -1; }
    QAccessible::Role role() const override { return QAccessible::Graphic; }
    void setText(QAccessible::Text, const QString&) override {}

    QString text(QAccessible::Text kind) const override
    {
        if (!isValid())
            return {};
        switch (kind) {
        case QAccessible::Name:
            return m_view->spokenName(m_id);
        case QAccessible::Description:
            return m_view->spokenDetails(m_id);
        default:
            return {};
        }
    }

    QRect rect() const override
    {
        if (!isValid())
            return {};
        const QRectF box = m_view->boxOf(m_id);
        const QRect onView = m_view->mapFromScene(box).boundingRect();
        return {m_view->viewport()->mapToGlobal(onView.topLeft()), onView.size()};
    }

    QAccessible::State state() const override
    {
        QAccessible::State state;
        if (!isValid()) {
            state.invalid = true;
            return state;
        }
        const auto chosen = m_view->session().selection();
        state.focusable = state.selectable = state.multiSelectable = true;
        state.selected = std::ranges::find(chosen, m_id) != chosen.end();
        state.focused = m_view->hasFocus() && chosen.size() == 1 && state.selected;
        state.active = state.focused;
        const QRect seen(m_view->viewport()->mapToGlobal(QPoint(0, 0)), m_view->viewport()->size());
        state.offscreen = !seen.intersects(rect());
        return state;
    }

    void* interface_cast(QAccessible::InterfaceType type) override
    {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this) : nullptr;
    }
    QStringList actionNames() const override { return {setFocusAction(), pressAction()}; }
    void doAction(const QString& name) override
    {
        if (!isValid())
            return;
        m_view->session().select({m_id});
        m_view->setFocus();
        if (name == pressAction())
            Q_EMIT m_view->detailsRequested(m_id);
    }
    QStringList keyBindingsForAction(const QString&) const override { return {}; }

private:
    QPointer<CanvasView> m_view;
    PartId m_id;
};

class CanvasInterface final : public QAccessibleWidget {
public:
    explicit CanvasInterface(CanvasView* view) : QAccessibleWidget(view, QAccessible::Canvas), m_view(view) {}
    ~CanvasInterface() override
    {
        for (const auto& [part, id] : m_children)
            QAccessible::deleteAccessibleInterface(id);
    }

    int childCount() const override { return m_view ? static_cast<int>(m_view->readingOrder().size()) : 0; }
    QAccessibleInterface* child(int index) const override
    {
        if (index < 0 || index >= childCount())
            return nullptr;
        return of(m_view->readingOrder()[static_cast<std::size_t>(index)]);
    }
    int indexOfChild(const QAccessibleInterface* child) const override
    {
        for (const auto& [part, id] : m_children)
            if (QAccessible::accessibleInterface(id) == child) {
                const auto& order = m_view->readingOrder();
                const auto place = std::ranges::find(order, part);
                return place == order.end() ? -1 : static_cast<int>(place - order.begin());
            }
        return -1;
    }
    QAccessibleInterface* childAt(int x, int y) const override
    {
        if (!m_view)
            return nullptr;
        const QPoint at = m_view->viewport()->mapFromGlobal(QPoint(x, y));
        const auto under = m_view->hits().allAt(m_view->mapToScene(at), m_view->toUnits(6));
        return under.empty() ? nullptr : of(under.front());
    }
    QAccessibleInterface* focusChild() const override
    {
        const auto chosen = m_view ? m_view->session().selection() : std::vector<PartId>();
        return m_view && m_view->hasFocus() && chosen.size() == 1 ? of(chosen.front()) : nullptr;
    }

private:
    QAccessibleInterface* of(PartId part) const
    {
        forgetGone();
        auto found = m_children.find(part);
        if (found == m_children.end())
            found = m_children
                        .emplace(part, QAccessible::registerAccessibleInterface(new PartInterface(m_view.data(), part)))
                        .first;
        return QAccessible::accessibleInterface(found->second);
    }
    void forgetGone() const
    {
        std::erase_if(m_children, [this](const auto& child) {
            if (m_view->shown().find(child.first) != nullptr)
                return false;
            QAccessible::deleteAccessibleInterface(child.second);
            return true;
        });
    }

    QPointer<CanvasView> m_view;
    mutable std::map<PartId, QAccessible::Id> m_children;
};

QAccessibleInterface* makeInterface(const QString&, QObject* object)
{
    auto* view = qobject_cast<CanvasView*>(object);
    return view != nullptr ? new CanvasInterface(view) : nullptr;
}

void tell(CanvasView& view, PartId part, QAccessible::Event what)
{
    if (!QAccessible::isActive())
        return;
    const auto& order = view.readingOrder();
    const auto place = std::ranges::find(order, part);
    if (place == order.end())
        return;
    QAccessibleEvent event(&view, what);
    event.setChild(static_cast<int>(place - order.begin()));
    QAccessible::updateAccessibility(&event);
}

}  // namespace

void installCanvasAccessibility()
{
    static const bool once = [] {
        QAccessible::installFactory(makeInterface);
        return true;
    }();
    (void)once;
}

void tellFocus(CanvasView& view, PartId part)
{
    tell(view, part, QAccessible::Focus);
    tell(view, part, QAccessible::Selection);
}

void tellChange(CanvasView& view, PartId part) { tell(view, part, QAccessible::NameChanged); }

}  // namespace tapward::app
