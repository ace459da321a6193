// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <QCoreApplication>
#include <QPageLayout>
#include <QSizeF>
#include <QString>
#include <QStringList>
#include <vector>

#include "print/page_picture.h"
#include "print/page_text.h"
#include "report/report.h"

class QPainter;

namespace tapward::app::print {

/// The customer's page, ready to paint: diagram on top, texts in columns below; what does not fit goes to
/// further pages. Texts are 7 to 8.2 pt, as the room allows. All measures in tenths of a point, inside the margins.
class PageLayout {
    Q_DECLARE_TR_FUNCTIONS(tapward::app::print::PageLayout)
public:
    /// @param plain  of the drawing, see Picture @param sheet  room inside the margins
    PageLayout(const document::Drawing& drawing, const DrawingLayout& plain, const report::PageContent& content,
               const std::vector<review::Finding>& findings, UnitSystem units, QSizeF sheet);

    int pages() const { return m_pages; }
    /// Points per module of the diagram: the bigger, the easier to read.
    double pictureScale() const { return m_picture->pointsPerModule(); }

    void paint(QPainter& painter, int page) const;  ///< page 0 .. pages()-1

private:
    struct Placed {
        int page;
        QPointF at;
        std::size_t strip;
    };
    void makeHeader(const report::PageContent& content, bool sample);
    void makeTexts(const document::Drawing& drawing, const report::PageContent& content,
                   const std::vector<review::Finding>& findings, UnitSystem units, double text_pt);
    void placeTexts();
    /// Fills the columns of one page from strip `from`; returns the first strip that did not fit.
    std::size_t fill(std::size_t from, double height, int page, double top, std::vector<Placed>* placed) const;
    /// Least column height that takes everything from `from` on, or nothing if `most` is too little.
    std::optional<double> leastHeight(std::size_t from, double most) const;
    void paintHeader(QPainter& painter, int page) const;

    QSizeF m_sheet;
    int m_columns = 2;
    double m_columnWidth = 0;
    int m_pages = 1;
    double m_headerHeight = 0, m_laterHeaderHeight = 0;
    QString m_title, m_subtitle;
    bool m_sample = false;
    struct Cell {
        QString label, value;
        double width;
    };
    std::vector<Cell> m_titleBlock;
    double m_titleBlockHeight = 0;
    QStringList m_longTexts;
    std::vector<Strip> m_strips;
    std::vector<Placed> m_placed;
    std::unique_ptr<Picture> m_picture;
    std::unique_ptr<Legend> m_legend;
    QRectF m_pictureFrame;
};

/// The page on one paper, turned the way that gives fewer pages, then the bigger diagram, unless asked for.
struct TurnedLayout {
    std::unique_ptr<PageLayout> layout;
    QPageLayout::Orientation orientation = QPageLayout::Portrait;
};
TurnedLayout layOut(QPageLayout paper, const document::Drawing& drawing, const report::PageContent& content,
                    const std::vector<review::Finding>& findings, UnitSystem units,
                    std::optional<QPageLayout::Orientation> orientation = {});

}  // namespace tapward::app::print
