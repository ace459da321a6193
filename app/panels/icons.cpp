// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/icons.h"

#include <QCoreApplication>
#include <QFile>
#include <QGuiApplication>
#include <QIconEngine>
#include <QPainter>
#include <QSvgRenderer>

#include "look/theme.h"

namespace tapward::app::look {

namespace {

/// Draws an SVG whose strokes say "currentColor" in the colour of the moment.
class SvgIconEngine final : public QIconEngine {
public:
    SvgIconEngine(QString name, QColor colour) : m_name(std::move(name)), m_colour(colour) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override
    {
        const QPalette palette = QGuiApplication::palette();
        QColor colour = m_colour.isValid() ? m_colour : palette.color(QPalette::Active, QPalette::ButtonText);
        if (mode == QIcon::Disabled)
            colour = palette.color(QPalette::Disabled, QPalette::ButtonText);
        else if (mode == QIcon::Selected)  // on the bar of the chosen row, whatever colour the desktop gives it
            colour = palette.color(QPalette::Active, QPalette::HighlightedText);
        QFile file(QStringLiteral(":/icons/%1.svg").arg(m_name));
        if (!file.open(QIODevice::ReadOnly))
            return;
        QByteArray svg = file.readAll();
        svg.replace("currentColor", colour.name().toLatin1());
        QSvgRenderer renderer(svg);
        const int side = std::min(rect.width(), rect.height());
        const QRectF square(rect.x() + (rect.width() - side) / 2.0, rect.y() + (rect.height() - side) / 2.0, side,
                            side);
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        renderer.render(painter, square);
        painter->restore();
    }

    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override
    {
        QPixmap picture(size);
        picture.fill(Qt::transparent);
        QPainter painter(&picture);
        paint(&painter, QRect(QPoint(0, 0), size), mode, state);
        return picture;
    }

    QIconEngine* clone() const override { return new SvgIconEngine(m_name, m_colour); }

private:
    QString m_name;
    QColor m_colour;
};

}  // namespace

QColor severity(review::Severity severity, const QPalette& palette)
{
    switch (severity) {
    case review::Severity::Danger:
        return Theme::of(palette).danger;
    case review::Severity::Caution:
        return Theme::of(palette).caution;
    case review::Severity::Note:
        return Theme::of(palette).note;
    }
    return {};
}

QIcon icon(const QString& name, QColor colour) { return QIcon(new SvgIconEngine(name, colour)); }

QIcon severityIcon(review::Severity level)
{
    const QColor colour = severity(level, QGuiApplication::palette());
    switch (level) {
    case review::Severity::Danger:
        return icon(QStringLiteral("danger"), colour);
    case review::Severity::Caution:
        return icon(QStringLiteral("caution"), colour);
    case review::Severity::Note:
        return icon(QStringLiteral("note"), colour);
    }
    return {};
}

QString severityWord(review::Severity severity)
{
    switch (severity) {
    case review::Severity::Danger:
        return QCoreApplication::translate("look", "Danger");
    case review::Severity::Caution:
        return QCoreApplication::translate("look", "Caution");
    case review::Severity::Note:
        return QCoreApplication::translate("look", "Note");
    }
    return {};
}

QPalette darkPalette()
{
    QPalette p;
    const QColor window(0x26, 0x28, 0x2b), base(0x1b, 0x1d, 0x1f), text(0xec, 0xee, 0xf0), grey(0x8a, 0x8f, 0x94);
    p.setColor(QPalette::Window, window);
    p.setColor(QPalette::WindowText, text);
    p.setColor(QPalette::Base, base);
    p.setColor(QPalette::AlternateBase, QColor(0x22, 0x24, 0x27));
    p.setColor(QPalette::ToolTipBase, QColor(0x33, 0x36, 0x3a));
    p.setColor(QPalette::ToolTipText, text);
    p.setColor(QPalette::PlaceholderText, QColor(0x9a, 0x9f, 0xa4));
    p.setColor(QPalette::Text, text);
    p.setColor(QPalette::Button, QColor(0x35, 0x38, 0x3c));
    p.setColor(QPalette::ButtonText, text);
    p.setColor(QPalette::BrightText, Qt::white);
    p.setColor(QPalette::Light, QColor(0x4b, 0x4f, 0x54));
    p.setColor(QPalette::Midlight, QColor(0x3f, 0x43, 0x47));
    p.setColor(QPalette::Mid, QColor(0x2c, 0x2f, 0x32));
    p.setColor(QPalette::Dark, QColor(0x18, 0x1a, 0x1c));
    p.setColor(QPalette::Shadow, QColor(0x0c, 0x0d, 0x0e));
    p.setColor(QPalette::Highlight, QColor(0x2b, 0x6c, 0xa3));
    p.setColor(QPalette::HighlightedText, Qt::white);
    p.setColor(QPalette::Link, QColor(0x56, 0xB4, 0xE9));
    p.setColor(QPalette::LinkVisited, QColor(0xCC, 0x79, 0xA7));
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        p.setColor(QPalette::Disabled, role, grey);
    p.setColor(QPalette::Disabled, QPalette::Highlight, QColor(0x45, 0x49, 0x4e));
    p.setColor(QPalette::Disabled, QPalette::HighlightedText, grey);
    return p;
}

QPalette strongPalette(bool dark)
{
    const QColor ground = dark ? Qt::black : Qt::white, text = dark ? Qt::white : Qt::black;
    QPalette p(text, dark ? QColor(0x20, 0x20, 0x20) : QColor(0xf0, 0xf0, 0xf0), text, text, text, text, text, ground,
               ground);
    p.setColor(QPalette::Mid, dark ? QColor(0x60, 0x60, 0x60) : QColor(0xa0, 0xa0, 0xa0));
    p.setColor(QPalette::Highlight, dark ? QColor(0xff, 0xe0, 0x30) : QColor(0x00, 0x30, 0x80));
    p.setColor(QPalette::HighlightedText, ground);
    p.setColor(QPalette::PlaceholderText, text);
    p.setColor(QPalette::ToolTipBase, ground);
    p.setColor(QPalette::ToolTipText, text);
    p.setColor(QPalette::Link, dark ? QColor(0x8c, 0xd0, 0xff) : QColor(0x00, 0x30, 0x80));
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        p.setColor(QPalette::Disabled, role, dark ? QColor(0xb0, 0xb0, 0xb0) : QColor(0x50, 0x50, 0x50));
    return p;
}

}  // namespace tapward::app::look
