// SPDX-License-Identifier: GPL-3.0-or-later
#include "print/page.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QHashSeed>
#include <QMarginsF>
#include <QPagedPaintDevice>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

#include "document/file.h"
#include "print/page_layout.h"
#include "print/paint_pages.h"
#include "print/pdf_finish.h"
#include "session/message_text.h"

namespace tapward::app::print {
int paintPages(QPagedPaintDevice& device, const document::Drawing& drawing, const report::PageContent& content,
               const std::vector<review::Finding>& findings, UnitSystem units,
               std::optional<QPageLayout::Orientation> orientation)
{
    device.setPageMargins(QMarginsF(kMargin_pt, kMargin_pt, kMargin_pt, kMargin_pt), QPageLayout::Point);
    const TurnedLayout turned = layOut(device.pageLayout(), drawing, content, findings, units, orientation);
    device.setPageOrientation(turned.orientation);
    const PageLayout& layout = *turned.layout;

    return paintEveryPage(device, layout);
}

std::optional<Problem> printPagePdf(const document::Drawing& drawing, const report::PageContent& content,
                                    const std::vector<review::Finding>& findings, UnitSystem units, PaperSize paper,
                                    QByteArray& out)
{
    QHashSeed::setDeterministicGlobalSeed();  // else the PDF's objects come in another order each time
    out.clear();
    QBuffer buffer(&out);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPageSize(QPageSize(paper == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter));
        label(writer, messageText(content.title, units), QByteArray::fromStdString(document::write(drawing)));
        if (paintPages(writer, drawing, content, findings, units) == 0)
            return Problem{"The page could not be drawn.", "Try again; if it stays so, export the drawing as SVG.", {}};
    }
    buffer.close();
    //: The language of this translation, as its two letters: es, fr, de.
    out = withLanguage(out, QCoreApplication::translate("tapward::app", "en").toLatin1());
    return std::nullopt;
}

}  // namespace tapward::app::print
