// SPDX-License-Identifier: GPL-3.0-or-later
#include "look/symbols.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <QFile>
#include <QFont>
#include <QFontMetricsF>
#include <QGuiApplication>
#include <QHash>
#include <QIconEngine>
#include <QPaintEngine>
#include <QPainter>
#include <QPainterPath>
#include <QPalette>
#include <QPixmap>
#include <QSvgRenderer>
#include <QXmlStreamReader>
#include <QXmlStreamWriter>
#include <vector>

namespace tapward::app {

namespace {

/// A letter on a symbol, by its baseline and middle.
struct Letter {
    QPointF at;
    double size;
    QString text;
};

/// A symbol file, its letters taken out: those are drawn upright whatever way the symbol is turned.
struct Symbol {
    QByteArray lines;  // SVG without text
    QRectF box;
    std::vector<Letter> letters;
};

constexpr QLatin1String kAll("all");  // names the whole symbol, to ask for its bounds

Symbol load(const QString& kind)
{
    Symbol symbol;
    QFile file(QStringLiteral(":/symbols/%1.svg").arg(kind));
    if (!file.open(QIODevice::ReadOnly))
        return symbol;
    QXmlStreamReader in(file.readAll());
    QXmlStreamWriter out(&symbol.lines);
    while (!in.atEnd()) {
        in.readNext();
        if (in.isComment())
            continue;
        if (in.isStartElement() && in.name() == QLatin1String("svg")) {
            const auto numbers = in.attributes().value(QLatin1String("viewBox")).toString().split(QLatin1Char(' '));
            if (numbers.size() == 4)
                symbol.box = {numbers[0].toDouble(), numbers[1].toDouble(), numbers[2].toDouble(),
                              numbers[3].toDouble()};
        }
        if (in.isStartElement() && in.name() == QLatin1String("text")) {
            Letter letter;
            const auto attributes = in.attributes();
            letter.at = {attributes.value(QLatin1String("x")).toDouble(),
                         attributes.value(QLatin1String("y")).toDouble()};
            letter.size = attributes.value(QLatin1String("font-size")).toDouble();
            letter.text = in.readElementText();
            symbol.letters.push_back(letter);
            continue;
        }
        const bool root = in.name() == QLatin1String("svg");
        if (in.isEndElement() && root)
            out.writeEndElement();
        if (in.tokenType() != QXmlStreamReader::Invalid && in.tokenType() != QXmlStreamReader::StartDocument)
            out.writeCurrentToken(in);
        if (in.isStartElement() && root) {
            out.writeStartElement(QLatin1String("g"));
            out.writeAttribute(QLatin1String("id"), kAll);
        }
    }
    return symbol;
}

const Symbol& symbolOf(std::string_view kind)
{
    static QHash<QString, Symbol> known;
    const QString id = QString::fromUtf8(kind.data(), static_cast<qsizetype>(kind.size()));
    auto found = known.find(id);
    if (found == known.end())
        found = known.insert(id, load(id));
    return *found;
}

/// The files are black on white with two line widths; everything else is made from them here.
std::shared_ptr<QSvgRenderer> rendererOf(std::string_view kind, const SymbolStyle& style)
{
    static QHash<QString, std::shared_ptr<QSvgRenderer>> known;
    const QString id = QString::fromUtf8(kind.data(), static_cast<qsizetype>(kind.size()));
    const QString key =
        QStringLiteral("%1 %2 %3 %4").arg(id, style.ink.name(), style.paper.name()).arg(static_cast<int>(style.weight));
    auto& renderer = known[key];
    if (renderer)
        return renderer;
    QByteArray svg = symbolOf(kind).lines;
    svg.replace("#ffffff", "@paper").replace("#000000", "@ink");
    svg.replace("@paper", style.paper.name().toUtf8()).replace("@ink", style.ink.name().toUtf8());
    if (style.weight == Weight::Heavy)
        svg.replace("stroke-width=\"1.6\"", "stroke-width=\"2.8\"")
            .replace("stroke-width=\"1\"", "stroke-width=\"1.7\"");
    if (style.weight == Weight::Dashed)
        svg.replace("stroke-width=", "stroke-dasharray=\"3 2\" stroke-width=");
    renderer = std::make_shared<QSvgRenderer>(svg);
    renderer->setAspectRatioMode(Qt::IgnoreAspectRatio);
    return renderer;
}

void paintMissing(QPainter& painter, const SymbolStyle& style)
{
    painter.setPen(QPen(style.ink, 1.6));
    painter.setBrush(style.paper);
    painter.drawRect(QRectF(-15, -15, 30, 30));
    QFont font = painter.font();
    font.setPixelSize(16);
    painter.setFont(font);
    painter.drawText(QRectF(-15, -15, 30, 30), Qt::AlignCenter, QStringLiteral("?"));
}

/// Draws the symbol at the size asked for, so that icons are sharp on every screen.
class SymbolEngine final : public QIconEngine {
public:
    SymbolEngine(std::string kind, QColor ink, QColor paper) : m_kind(std::move(kind)), m_ink(ink), m_paper(paper) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override
    {
        const QRectF box =
            hasSymbol(m_kind) ? symbolBox(m_kind).adjusted(-1.5, -1.5, 1.5, 1.5) : QRectF(-17, -17, 34, 34);
        const double scale = std::min(rect.width() / box.width(), rect.height() / box.height());
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        painter->translate(QRectF(rect).center());
        painter->scale(scale, scale);
        painter->translate(-box.center());
        if (mode == QIcon::Disabled)
            painter->setOpacity(0.4);
        SymbolStyle style{.ink = m_ink, .paper = m_paper};
        if (mode == QIcon::Selected) {  // on the bar of the chosen row, whatever colour the desktop gives it
            const QPalette palette = QGuiApplication::palette();
            style.ink = palette.color(QPalette::Active, QPalette::HighlightedText);
            style.paper = palette.color(QPalette::Active, QPalette::Highlight);
        }
        paintSymbol(*painter, m_kind, style);
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

    QIconEngine* clone() const override { return new SymbolEngine(*this); }

private:
    std::string m_kind;
    QColor m_ink, m_paper;
};

/// A letter's outline about its own middle. Outlines, not text: a symbol's letters are part of its shape, may be
/// small, and are no words to search for.
const QPainterPath& outlineOf(const Letter& letter, bool bold)
{
    static QHash<QString, QPainterPath> known;
    const QString family = QFont().family();
    auto& outline = known[QStringLiteral("%1 %2 %3 %4").arg(family, letter.text).arg(letter.size).arg(bold)];
    if (!outline.isEmpty())
        return outline;
    QFont font;
    font.setBold(bold);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setPixelSize(static_cast<int>(letter.size));
    const double width = QFontMetricsF(font).horizontalAdvance(letter.text);
    outline.addText(QPointF(-width / 2, 0.36 * letter.size), font, letter.text);
    return outline;
}

}  // namespace

QRectF symbolBox(std::string_view kind) { return symbolOf(kind).box; }

QRectF symbolInk(std::string_view kind)
{
    static QHash<QString, QRectF> known;
    auto& ink = known[QString::fromUtf8(kind.data(), static_cast<qsizetype>(kind.size()))];
    if (!ink.isEmpty())
        return ink;
    const Symbol& symbol = symbolOf(kind);
    ink = QSvgRenderer(symbol.lines).boundsOnElement(kAll);
    for (const auto& [at, size, text] : symbol.letters) {  // capitals: about 0.7 of their size wide and high
        const double half = 0.35 * size * static_cast<double>(text.size());
        ink |= QRectF(at.x() - half, at.y() - 0.73 * size, 2 * half, 0.73 * size);
    }
    ink = ink.isEmpty() ? symbol.box : ink & symbol.box;
    return ink;
}

bool hasSymbol(std::string_view kind) { return !symbolOf(kind).lines.isEmpty(); }

void paintSymbol(QPainter& painter, std::string_view kind, const SymbolStyle& style)
{
    painter.save();
    if (!hasSymbol(kind)) {
        paintMissing(painter, style);
        painter.restore();
        return;
    }
    const Symbol& symbol = symbolOf(kind);
    QTransform turned;
    turned.rotate(90.0 * style.turn);
    if (style.flipped)
        turned.scale(-1, 1);  // applied first
    painter.save();
    painter.setTransform(turned, true);
    rendererOf(kind, style)->render(&painter, symbol.box);
    painter.restore();

    for (const auto& letter : symbol.letters) {
        // Letters turn about their own middle; 0.36 of the size is half a capital's height.
        const QPointF middle = turned.map(letter.at - QPointF(0, 0.36 * letter.size));
        painter.translate(middle);
        painter.fillPath(outlineOf(letter, style.weight == Weight::Heavy), style.ink);
        painter.translate(-middle);
    }
    painter.restore();
}

void paintSymbolOnScreen(QPainter& painter, std::string_view kind, const SymbolStyle& style)
{
    constexpr double kMargin = 3;      // lines reach beyond the box
    constexpr double kMostPixels = 400;  // larger ones are few on a screen
    const QTransform transform = painter.deviceTransform();
    const double scale = transform.m11();
    const QRectF box = hasSymbol(kind) ? symbolBox(kind).adjusted(-kMargin, -kMargin, kMargin, kMargin) : QRectF();
    const double reach = std::max(box.width(), box.height()) * scale;
    if (painter.paintEngine()->type() != QPaintEngine::Raster || box.isNull() || reach > kMostPixels
        || transform.type() > QTransform::TxScale || transform.m22() != scale || scale <= 0) {
        paintSymbol(painter, kind, style);
        return;
    }
    static QHash<QString, QPixmap> known;
    if (known.size() > 1500)
        known.clear();
    auto& picture = known[QStringLiteral("%1 %2 %3 %4 %5 %6 %7 %8")
                              .arg(QString::fromUtf8(kind.data(), static_cast<qsizetype>(kind.size())))
                              .arg(style.ink.rgba())
                              .arg(style.paper.rgba())
                              .arg(static_cast<int>(style.weight))
                              .arg(style.turn)
                              .arg(style.flipped)
                              .arg(scale, 0, 'g', 9)
                              .arg(QFont().family())];
    const int half = static_cast<int>(std::ceil(reach / 2));  // square: it may lie on its side
    if (picture.isNull()) {
        picture = QPixmap(2 * half, 2 * half);
        picture.fill(Qt::transparent);
        QPainter inside(&picture);
        inside.setRenderHint(QPainter::Antialiasing);
        inside.translate(half, half);
        inside.scale(scale, scale);
        paintSymbol(inside, kind, style);
    }
    // On whole pixels of the screen, so that the picture is copied, not resampled.
    picture.setDevicePixelRatio(painter.device()->devicePixelRatioF());
    const QPointF corner(std::round(transform.dx()) - half, std::round(transform.dy()) - half);
    painter.save();
    // Not the device's own corner yet: inside a window the view paints with an offset, which the reset keeps.
    painter.resetTransform();
    painter.drawPixmap(painter.deviceTransform().inverted().map(corner), picture);
    painter.restore();
}

QIcon symbolIcon(std::string_view kind, const QColor& ink, const QColor& paper)
{
    return QIcon(new SymbolEngine(std::string(kind), ink, paper));
}

}  // namespace tapward::app
