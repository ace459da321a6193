// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/start_page.h"

#include <algorithm>
#include <QCoreApplication>
#include <QDir>
#include <QEvent>
#include <QFile>
#include <QFileInfo>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QJsonDocument>
#include <QJsonObject>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QScrollArea>
#include <QTimer>
#include <QToolButton>
#include <QVBoxLayout>

#include "canvas/drawing_layout.h"
#include "canvas/shape_painter.h"
#include "document/file.h"
#include "look/spacing.h"
#include "panels/icons.h"
#include "shell/link_button.h"
#include "shell/places.h"
#include "shell/words.h"

namespace tapward::app {

namespace {

constexpr QSize kPicture(236, 92);  // of a template
constexpr double kHeavier = 1.8;    // its symbols, against its lengths
constexpr int kFewFiles = 5;        // whoever has opened more needs no hints, and there is no room for both

/// What scrolls takes the room there is: it is not laid out only to find how much it would like.
class Room final : public QScrollArea {
public:
    QSize sizeHint() const override { return {640, 480}; }

protected:
    void resizeEvent(QResizeEvent* event) override
    {
        QScrollArea::resizeEvent(event);
        fit();
    }
    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (watched == widget() && event->type() == QEvent::LayoutRequest)
            fit();
        return QScrollArea::eventFilter(watched, event);
    }

private:
    // What wraps asks for more height than its least, and would be squeezed before anything scrolls.
    void fit()
    {
        if (QWidget* all = widget(); all && all->layout() && all->layout()->hasHeightForWidth())
            all->setMinimumHeight(all->layout()->totalHeightForWidth(viewport()->width()));
    }
};

/// The title in a drawing's title block. That stands first in the files that come with the program: the rest of them
/// need not be read before the first frame. A block with braces in it is found by reading all.
QString titleIn(const QByteArray& json)
{
    const auto begin = json.indexOf('{', json.indexOf("\"job\"")), end = json.indexOf('}', begin);
    const auto piece = QJsonDocument::fromJson(json.mid(begin, end - begin + 1));
    const auto job = piece.isObject() ? piece.object()
                                      : QJsonDocument::fromJson(json).object().value(QStringLiteral("job")).toObject();
    return job.value(QStringLiteral("title")).toString();
}

std::vector<Sample> drawingsIn(const QString& folder)
{
    std::vector<Sample> all;
    for (const auto& info : QDir(folder).entryInfoList(QDir::Files, QDir::Name)) {
        QFile file(info.filePath());
        if (!file.open(QIODevice::ReadOnly))
            continue;
        const QString title = titleIn(file.readAll());
        all.push_back({info.filePath(), title.isEmpty() ? info.completeBaseName() : title});
    }
    return all;
}

QLabel* heading(const QString& text, const QFont& font)
{
    auto* label = new QLabel(text);
    label->setFont(font);
    return label;
}

/// A sketch of the layout to know it by: lines and symbols heavier than the canvas would draw them at this size.
QPixmap pictureOf(const QString& resource, const QSize& size, double ratio, const Theme& theme)
{
    QPixmap picture(size * ratio);
    picture.setDevicePixelRatio(ratio);
    picture.fill(theme.paper);
    QFile file(resource);
    if (!file.open(QIODevice::ReadOnly))
        return picture;
    const auto drawing = document::read(file.readAll().toStdString());
    if (!drawing)
        return picture;
    PaintOptions options;
    options.theme = theme;
    options.labels = false;
    const DrawingLayout layout = layoutOf(*drawing, options);
    const QRectF bounds = layout.bounds.marginsAdded({25, 25, 25, 25});
    QPainter painter(&picture);
    painter.setPen(QPen(theme.grid, 1));
    painter.drawRect(QRectF(QPointF(), size).adjusted(0.5, 0.5, -0.5, -0.5));
    painter.setRenderHint(QPainter::Antialiasing);
    const double scale = std::min(size.width() / bounds.width(), size.height() / bounds.height());
    painter.translate(QRectF(QPointF(), size).center());
    painter.scale(scale, scale);
    painter.translate(-bounds.center());
    for (const auto& pipe : layout.pipes) {
        painter.setPen(QPen(pipePen(pipe.trace.use, theme, false).color(), 1.4 / scale));
        painter.drawPolyline(pipe.corners.data(), static_cast<int>(pipe.corners.size()));
    }
    for (const auto& symbol : layout.symbols) {
        painter.save();
        painter.translate(symbol.at);
        painter.scale(kHeavier, kHeavier);
        painter.translate(-symbol.at);
        paintShape(painter, symbol, options);
        painter.restore();
    }
    return picture;
}

}  // namespace

QString Sample::shown() const { return QCoreApplication::translate("drawings", title.toUtf8().constData()); }

// Read once: the start page and the menus both list them.
const std::vector<Sample>& samples()
{
    static const auto all = drawingsIn(QStringLiteral(":/samples"));
    return all;
}

const std::vector<Sample>& templates()
{
    static const auto all = drawingsIn(QStringLiteral(":/templates"));
    return all;
}

QWidget* StartPage::templateButtons()
{
    auto* grid = new QWidget;
    auto* cells = new QGridLayout(grid);
    cells->setContentsMargins(0, 0, 0, 0);
    cells->setSpacing(look::kNext);
    QPixmap nothing(kPicture);
    nothing.fill(Qt::transparent);
    for (const auto& one : templates()) {
        auto* button = new PictureButton;
        button->setText(one.shown());
        button->setAccessibleName(tr("New from Template: %1").arg(one.shown()));
        button->setAccessibleDescription(tr("An invented layout with sample figures, opens as an untitled copy"));
        button->setToolTip(
            tr("%1: an invented layout, every figure an estimate. Opens as an untitled copy.").arg(one.shown()));
        button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
        button->setProperty("resource", one.resource);
        button->setIconSize(kPicture);
        button->setIcon(nothing);  // the picture comes later and must not push the page about
        connect(button, &QToolButton::clicked, this,
                [this, resource = one.resource] { Q_EMIT sampleRequested(resource); });
        const int at = static_cast<int>(m_templates.size());
        cells->addWidget(button, at / 2, at % 2);
        m_templates.push_back(button);
    }
    return grid;
}

void StartPage::paintTemplates()
{
    const Theme theme = Theme::of(palette());
    for (auto* button : m_templates)
        button->setIcon(pictureOf(button->property("resource").toString(), kPicture, devicePixelRatioF(), theme));
}

void StartPage::takeFocus()
{
    if (!m_templates.empty())
        m_templates.front()->setFocus();
}

void StartPage::keyPressEvent(QKeyEvent* event)
{
    auto* button = qobject_cast<QAbstractButton*>(focusWidget());
    if (button && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter))
        button->click();  // everything here is a way to begin, and none of them the one that Return means
    else
        QWidget::keyPressEvent(event);
}

bool StartPage::eventFilter(QObject* watched, QEvent* event)
{
    // The words first: the pictures cost as much as the whole page. (The page itself is never painted: what
    // scrolls covers it.)
    if (event->type() == QEvent::Paint && !m_pictures) {
        m_pictures = true;
        QTimer::singleShot(0, this, &StartPage::paintTemplates);
    }
    return QWidget::eventFilter(watched, event);
}

void StartPage::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && m_pictures)
        paintTemplates();
}

StartPage::StartPage(QWidget* parent) : QWidget(parent), m_recent(new QVBoxLayout), m_tips(new QWidget)
{
    // What scrolls comes in empty: else it is laid out for sizes it never has.
    auto* scroll = new Room;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto* middle = new QWidget;
    scroll->setWidget(middle);
    auto* inside = new QWidget;
    inside->setMaximumWidth(fontMetrics().averageCharWidth() * 170);
    auto* rows = new QVBoxLayout(inside);
    rows->setContentsMargins(look::kFar, look::kFar, look::kFar, look::kApart);
    rows->setSpacing(look::kApart);
    auto* columns = new QHBoxLayout;
    columns->setContentsMargins(0, 0, 0, 0);
    columns->setSpacing(look::kFar);
    auto* left = new QVBoxLayout;
    left->setSpacing(look::kNext);  // else the columns' distance is inherited
    auto* title = new QHBoxLayout;
    title->setSpacing(look::kApart);
    auto* sign = new QLabel;
    sign->setPixmap(look::icon(QStringLiteral("tapward")).pixmap(56, 56));
    title->addWidget(sign);
    title->addWidget(heading(tr("Tapward"), look::titleFont(font())));
    title->addStretch();
    left->addLayout(title);
    auto* what =
        new Words(tr("Draw the coach's hot and cold plumbing, drop in a preheat loop, and see what it will do. "
                     "Begin with a template near your coach, open a sample to look around, or draw your own."));
    left->addWidget(what);
    left->addSpacing(8);
    left->addWidget(heading(tr("New from Template"), look::headFont(font())));
    left->addWidget(templateButtons());
    left->addSpacing(8);

    const auto addLink = [&](QVBoxLayout* column, const char* icon, const QString& text, const QString& more) {
        auto* button = new LinkButton(look::icon(QString::fromLatin1(icon)), text, more);
        column->addWidget(button);
        return button;
    };
    for (const auto& sample : samples()) {
        auto* link = addLink(left, "play", tr("Open Sample: %1").arg(sample.shown()),
                             tr("Invented coach, sample figures, opens as a copy"));
        connect(link, &LinkButton::clicked, this,
                [this, resource = sample.resource] { Q_EMIT sampleRequested(resource); });
    }
    connect(addLink(left, "new", tr("New Drawing"), tr("An empty drawing with one case")), &LinkButton::clicked, this,
            &StartPage::newRequested);
    connect(addLink(left, "open", tr("Open Drawing\u2026"), tr("A .tapward file")), &LinkButton::clicked, this,
            &StartPage::openRequested);
    left->addStretch(1);
    auto* caution = new Words(tr("Predictions support a trained technician; they replace neither the heater maker's "
                                 "instructions nor local codes nor licensed practice. Hot water, gas, 12 V wiring and "
                                 "pressure can hurt."));
    auto* right = new QVBoxLayout;
    right->setSpacing(look::kNext);
    right->addWidget(heading(tr("Recent drawings"), look::headFont(font())));
    m_recent->setSpacing(0);
    right->addLayout(m_recent);
    auto* tips = new QVBoxLayout(m_tips);
    tips->setContentsMargins(0, look::kApart, 0, 0);
    tips->setSpacing(look::kNext);
    tips->addWidget(heading(tr("Three things to try in a sample"), look::headFont(font())));
    for (const QString& text :
         {tr("Drag the time slider under the drawing: the pipes take the color of the water."),
          tr("Select a pump and lower its voltage range or curve: the loop flow answers at once."),
          tr("Press F8 to walk through the findings, and Shift+F8 to walk back.")}) {
        auto* label = new Words(QStringLiteral("\u2022 ") + text);
        tips->addWidget(label);
    }
    connect(addLink(tips, "help", tr("First Job, Step by Step"),
                    tr("A small coach of your own from an empty drawing to the page, ticked off as you go")),
            &LinkButton::clicked, this, &StartPage::firstJobRequested);
    right->addWidget(m_tips);
    right->addStretch(1);
    columns->addLayout(left, 3);
    columns->addLayout(right, 2);
    rows->addLayout(columns, 1);
    rows->addWidget(caution);

    auto* line = new QHBoxLayout(middle);
    line->addStretch();
    line->addWidget(inside, 10);
    line->addStretch();
    middle->installEventFilter(this);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(scroll);
    refresh();
}

void StartPage::refresh()
{
    while (QLayoutItem* item = m_recent->takeAt(0)) {
        if (QWidget* old = item->widget()) {
            old->hide();  // out of the layout it would float about until it is deleted
            old->deleteLater();
        }
        delete item;
    }
    const QStringList files = RecentFiles().list();
    m_tips->setVisible(files.size() <= kFewFiles);
    if (files.isEmpty()) {
        auto* none = new Words(tr("Drawings you open or save are listed here."));
        m_recent->addWidget(none);
    }
    for (const QString& path : files) {
        const QFileInfo info(path);
        auto* button = new LinkButton(look::icon(QStringLiteral("new")), info.completeBaseName(),
                                      info.exists() ? breakable(QDir::toNativeSeparators(info.path()))
                                                    : tr("Missing: it was moved or deleted"));
        button->setEnabled(info.exists());
        button->setAccessibleName(tr("Open %1").arg(info.fileName()));
        button->setToolTip(path);
        connect(button, &LinkButton::clicked, this, [this, path] { Q_EMIT fileRequested(path); });
        m_recent->addWidget(button);
    }
}

}  // namespace tapward::app
