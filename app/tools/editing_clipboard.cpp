// SPDX-License-Identifier: GPL-3.0-or-later
// Cut, copy and paste: parts for Tapward, a picture and words for other programs.
#include <algorithm>
#include <cmath>
#include <QApplication>
#include <QBuffer>
#include <QClipboard>
#include <QMimeData>
#include <QPainter>
#include <QSvgGenerator>
#include <utility>

#include "document/cell_block.h"
#include "document/file.h"
#include "look/kind_text.h"
#include "session/message_text.h"
#include "session/mime_types.h"
#include "tools/editing_canvas.h"

namespace tapward::app {

namespace {

using document::PartId;

/// The middle of a group of parts and pipes, in modules.
document::Point middleOf(const std::vector<document::Part>& copied)
{
    QRectF box;
    for (const auto& part : copied) {
        if (!document::kindOf(part).isPipe) {
            box |= QRectF(part.at.x - 1, part.at.y - 1, 2, 2);
            continue;
        }
        for (const auto& end : part.ends)
            if (end.part == document::kNoPart)
                box |= QRectF(end.loose.x - 0.5, end.loose.y - 0.5, 1, 1);
    }
    return {box.center().x(), box.center().y()};
}

/// Whether a copy would lie exactly on a part that is there.
bool liesOnAnother(const document::Drawing& drawing, const std::vector<document::Part>& copied, double dx, double dy)
{
    return std::ranges::any_of(copied, [&](const document::Part& copy) {
        return !document::kindOf(copy).isPipe && std::ranges::any_of(drawing.parts, [&](const document::Part& part) {
            return !document::kindOf(part).isPipe && part.at == document::Point{copy.at.x + dx, copy.at.y + dy};
        });
    });
}

/// The parts as a drawing of their own; a pipe that goes on to something else ends loose.
document::Drawing excerpt(const document::Drawing& drawing, const std::vector<PartId>& ids)
{
    document::Drawing result;
    const auto has = [&](PartId id) { return std::ranges::find(ids, id) != ids.end(); };
    for (const auto& original : drawing.parts) {
        if (!has(original.id))
            continue;
        document::Part part = original;
        for (auto& end : part.ends)
            if (end.part != document::kNoPart && !has(end.part)) {
                const auto* other = drawing.find(end.part);
                end = {document::kNoPart, {}, document::portPlace(*other, *document::kindOf(*other).port(end.port))};
            }
        result.parts.push_back(std::move(part));
    }
    return result;
}

/// For text processors and drawing programs: black on white, as printed.
QByteArray pictureOf(const document::Drawing& drawing, const std::vector<PartId>& ids, UnitSystem units)
{
    const auto part = excerpt(drawing, ids);
    PaintOptions options;
    options.units = units;
    const QRectF box = drawingBounds(part, options).adjusted(-4, -4, 4, 4);
    QBuffer file;
    QSvgGenerator svg;
    svg.setOutputDevice(&file);
    svg.setSize(box.size().toSize());
    svg.setViewBox(QRectF({0, 0}, box.size()));
    QPainter painter(&svg);
    painter.translate(-box.topLeft());
    paintDrawing(painter, part, options);
    painter.end();
    return file.data();
}

std::optional<std::vector<document::Part>> clipboardParts(std::optional<Problem>* why)
{
    const auto* data = QApplication::clipboard()->mimeData();
    if (data == nullptr || !data->hasFormat(QLatin1String(kPartsMime)))
        return std::nullopt;
    const QByteArray json = data->data(QLatin1String(kPartsMime));
    auto copied = document::readParts({json.constData(), static_cast<std::size_t>(json.size())});
    if (copied)
        return std::move(*copied);
    *why = copied.error();
    return std::nullopt;
}

}  // namespace

void EditingCanvas::copy()
{
    const auto& drawing = session().drawing();
    const auto& chosen = session().selection();
    if (chosen.empty())
        return;
    document::CellBlock lines;
    for (const auto id : chosen)
        if (const auto* part = drawing.find(id)) {
            auto& cells = lines.emplace_back();
            cells = {part->tag, kindTitle(document::kindOf(*part)).toStdString()};
            for (const auto& value : shownValues(*part, session().units()))
                cells.push_back(value.toStdString());
        }
    auto* mime = new QMimeData;
    mime->setData(QStringLiteral("image/svg+xml"), pictureOf(drawing, chosen, session().units()));
    mime->setData(QLatin1String(kPartsMime), QByteArray::fromStdString(document::writeParts(drawing, chosen)));
    mime->setText(QString::fromStdString(document::writeCells(lines)).chopped(1));
    QApplication::clipboard()->setMimeData(mime);
    m_pasteCount = 0;
}

void EditingCanvas::insertCopies(const std::vector<document::Part>& copied, double dx, double dy)
{
    auto edit = document::pasteParts(session().drawing(), copied, dx, dy);
    const bool made = edit.has_value();
    perform(std::move(edit));
    if (!made)
        return;
    session().select(session().lastAdded());
    showSelectionToo();
}

void EditingCanvas::paste(bool inPlace, bool atPointer)
{
    std::optional<Problem> why;
    const auto copied = clipboardParts(&why);
    if (!copied) {
        Q_EMIT message(why ? problemText(*why, session().units())
                           : tr("There are no parts on the clipboard. Copy some first."));
        return;
    }
    if (inPlace) {
        insertCopies(*copied, 0, 0);
        return;
    }
    const auto mouse = mouseOnView();
    if (atPointer && mouse) {
        // Again at the same place: step aside, never exactly on top of the last copy.
        m_pasteCount = *mouse == m_lastPaste ? m_pasteCount + 1 : 0;
        m_lastPaste = *mouse;
        const auto to = toDrawing(snapped(mapToScene(*mouse), Qt::NoModifier));
        const auto from = middleOf(*copied);
        double dx = std::round(to.x - from.x) + 2 * m_pasteCount, dy = std::round(to.y - from.y) + 2 * m_pasteCount;
        while (liesOnAnother(session().drawing(), *copied, dx, dy)) {
            dx += 2;
            dy += 2;
        }
        insertCopies(*copied, dx, dy);
        return;
    }
    double by = 2;
    while (liesOnAnother(session().drawing(), *copied, by, by))
        by += 2;
    insertCopies(*copied, by, by);
}

void EditingCanvas::duplicate()
{
    const auto json = document::writeParts(session().drawing(), session().selection());
    const auto copied = document::readParts(json);
    if (!copied)
        return;
    double by = 2;
    while (liesOnAnother(session().drawing(), *copied, by, by))
        by += 2;
    insertCopies(*copied, by, by);
}

}  // namespace tapward::app
