// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/help_window.h"

#include <algorithm>
#include <iterator>
#include <QAction>
#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <QTextBrowser>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "panels/icons.h"

namespace tapward::app {

namespace {

struct Word {
    const char* word;
    const char* meaning;
};

// Words of the trade, in Tapward's own sentences.
constexpr Word kWords[] = {
    {QT_TRANSLATE_NOOP("glossary", "Activation flow"),
     QT_TRANSLATE_NOOP("glossary", "The flow at which a tankless heater decides to light. Once lit it burns on down to "
                                   "its hold flow, which is lower.")},
    {QT_TRANSLATE_NOOP("glossary", "Basis"),
     QT_TRANSLATE_NOOP("glossary",
                       "Where a value comes from: measured on the coach, read off a data sheet, or estimated.")},
    {QT_TRANSLATE_NOOP("glossary", "Bay"),
     QT_TRANSLATE_NOOP("glossary", "A compartment a pipe runs through; its air decides how fast the pipe cools.")},
    {QT_TRANSLATE_NOOP("glossary", "Case"),
     QT_TRANSLATE_NOOP("glossary", "A script in time: taps opened, the button pressed, the supply changed, a part "
                                   "failing. Every prediction belongs to one.")},
    {QT_TRANSLATE_NOOP("glossary", "Check valve"),
     QT_TRANSLATE_NOOP(
         "glossary",
         "Lets water through one way only. It opens at its cracking pressure, which a small pump has to spare.")},
    {QT_TRANSLATE_NOOP("glossary", "Circulator"),
     QT_TRANSLATE_NOOP("glossary",
                       "A small centrifugal pump for the loop. Stopped, it lets water pass in both directions.")},
    {QT_TRANSLATE_NOOP("glossary", "Cool-down wait"),
     QT_TRANSLATE_NOOP(
         "glossary",
         "The shortest rest before the next run is allowed. Repeated runs start warmer each time and end hotter.")},
    {QT_TRANSLATE_NOOP("glossary", "Crossover"),
     QT_TRANSLATE_NOOP("glossary", "An unwanted path between hot and cold, for instance through a valve stuck open.")},
    {QT_TRANSLATE_NOOP("glossary", "Demand pump"),
     QT_TRANSLATE_NOOP(
         "glossary",
         "The coach's own pressure pump. Its switch starts it at cut-in and stops it at cut-out pressure.")},
    {QT_TRANSLATE_NOOP("glossary", "Head budget"),
     QT_TRANSLATE_NOOP("glossary", "What uses up the pump's pressure around the loop, biggest item first.")},
    {QT_TRANSLATE_NOOP("glossary", "High limit"),
     QT_TRANSLATE_NOOP("glossary", "An independent device that ends a run when the ordinary stop has failed.")},
    {QT_TRANSLATE_NOOP("glossary", "Hold flow"),
     QT_TRANSLATE_NOOP("glossary", "The flow under which a lit burner goes out.")},
    {QT_TRANSLATE_NOOP("glossary", "Inlet lockout"),
     QT_TRANSLATE_NOOP("glossary", "A refusal to run while the water going back to the heater is too warm already.")},
    {QT_TRANSLATE_NOOP("glossary", "Margin"),
     QT_TRANSLATE_NOOP("glossary", "How far the loop flow stands above the activation flow. Under a tenth is thin.")},
    {QT_TRANSLATE_NOOP("glossary", "Minimum fire"),
     QT_TRANSLATE_NOOP("glossary",
                       "The least heat the lit burner can give. At a small flow it may heat water past the setpoint.")},
    {QT_TRANSLATE_NOOP("glossary", "Preheat loop, run"),
     QT_TRANSLATE_NOOP("glossary", "The loop carries water from the heater to the tap and back; a run is one "
                                   "start-to-stop of it, so that the tap is warm before it is opened.")},
    {QT_TRANSLATE_NOOP("glossary", "Purge volume"),
     QT_TRANSLATE_NOOP(
         "glossary",
         "The water standing in the pipe between heater and tap. It has to move before warm water can arrive.")},
    {QT_TRANSLATE_NOOP("glossary", "Return"),
     QT_TRANSLATE_NOOP(
         "glossary",
         "The way back to the heater: a pipe of its own, or the cold line, which then holds warm water for a while.")},
    {QT_TRANSLATE_NOOP("glossary", "Stage"),
     QT_TRANSLATE_NOOP("glossary", "Existing parts stay, added ones come with the job, removed ones go. Before shows "
                                   "existing and removed, after shows existing and added.")},
    {QT_TRANSLATE_NOOP("glossary", "Stop"),
     QT_TRANSLATE_NOOP("glossary", "What ends a run: a volume, a time, a temperature, or whichever comes first.")},
    {QT_TRANSLATE_NOOP("glossary", "Tee off"),
     QT_TRANSLATE_NOOP("glossary", "To take a branch out of a pipe with a tee.")},
    {QT_TRANSLATE_NOOP("glossary", "Travel time"),
     QT_TRANSLATE_NOOP("glossary", "How long a motorized valve takes from shut to open.")},
    {QT_TRANSLATE_NOOP("glossary", "Wait"),
     QT_TRANSLATE_NOOP("glossary", "The seconds from opening a tap until its water is warm.")},
    {QT_TRANSLATE_NOOP("glossary", "Wasted water"),
     QT_TRANSLATE_NOOP("glossary", "What goes down the drain before the tap is warm.")},
};

QString word(const char* text) { return QCoreApplication::translate("glossary", text); }

/// Shows our own mark-up; whatever it may name, nothing is read.
class StillText final : public QTextBrowser {
    QVariant loadResource(int, const QUrl&) override { return {}; }
};

QString howHtml()
{
    return HelpWindow::tr(
        "<h2>How the window works</h2>"
        "<p><b>Draw.</b> Drag a part from the list onto the drawing, or pick it and click. Drop it on a pipe to put it "
        "in line. "
        "Drag from port to port to lay a pipe. Type the real length in the details: the drawing is not to scale.</p>"
        "<p><b>Select.</b> Click; Shift adds, Ctrl switches. A dragged frame selects everything it touches. Tab walks "
        "through the parts.</p>"
        "<p><b>Stages.</b> Draw what is there as existing, then choose <i>Added</i> for new parts. The parts list "
        "counts what is added.</p>"
        "<p><b>Values.</b> Type with or without a unit: 2 ft 3 in, 3*0.4 m, 1/2, 0,7 m. A bare number is in the unit "
        "shown. "
        "Enter keeps it, Esc takes it back. State the basis beside it.</p>"
        "<p><b>Predictions.</b> They follow each change. While they are being worked out the last ones are grayed.</p>"
        "<p><b>Time.</b> The slider under the drawing moves drawing, chart and table together. Arrow keys go 1 s, Page "
        "keys 10 s.</p>"
        "<p><b>Your work.</b> Unsaved changes are copied every few seconds to the state folder, and offered again if "
        "the program "
        "ends badly. Your own file changes only when you save.</p>");
}

}  // namespace

QString glossaryHtml()
{
    QString html = QStringLiteral("<h2>%1</h2><dl>").arg(HelpWindow::tr("Words"));
    for (const auto& entry : kWords)
        html += QStringLiteral("<dt><b>%1</b></dt><dd>%2</dd>")
                    .arg(word(entry.word).toHtmlEscaped(), word(entry.meaning).toHtmlEscaped());
    return html + QStringLiteral("</dl>");
}

HelpWindow::HelpWindow(QWidget* parent) : QDialog(parent), m_text(new StillText)
{
    setWindowTitle(tr("Help"));
    resize(fontMetrics().averageCharWidth() * 90, fontMetrics().height() * 36);
    m_text->setAccessibleName(tr("Help text"));
    m_text->setOpenExternalLinks(false);
    auto* buttons = new QDialogButtonBox;
    connect(buttons->addButton(tr("Close"), QDialogButtonBox::RejectRole), &QPushButton::clicked, this,
            &QDialog::close);
    auto* all = new QVBoxLayout(this);
    all->addWidget(m_text);
    all->addWidget(buttons);
}

void HelpWindow::showFor(QWidget* focused)
{
    QString here;
    if (focused) {
        const QString name = focused->accessibleName();
        QString about = focused->accessibleDescription();
        if (about.isEmpty())
            about = focused->toolTip();
        if (!name.isEmpty() && !about.isEmpty())
            here = QStringLiteral("<h2>%1</h2><p>%2</p>").arg(name.toHtmlEscaped(), about.toHtmlEscaped());
    }
    m_text->setHtml(here + howHtml() + glossaryHtml());
    show();
    raise();
    activateWindow();
}

ShortcutList::ShortcutList(const QList<QAction*>& actions, QWidget* parent) : QDialog(parent)
{
    setWindowTitle(tr("Keyboard Shortcuts"));
    resize(fontMetrics().averageCharWidth() * 70, fontMetrics().height() * 34);
    auto* list = new QTreeWidget;
    list->setAccessibleName(tr("List of shortcuts"));
    list->setColumnCount(2);
    list->setHeaderLabels({tr("Command"), tr("Keys")});
    list->setRootIsDecorated(false);
    int commandWidth = 0, keyWidth = 0;
    const auto add = [&](QString text, const QString& keys) {
        text.remove(QLatin1Char('&'));
        text.remove(QStringLiteral("..."));
        text.remove(QChar(0x2026));
        new QTreeWidgetItem(list, {text, keys});
        commandWidth = std::max(commandWidth, fontMetrics().horizontalAdvance(text));
        keyWidth = std::max(keyWidth, fontMetrics().horizontalAdvance(keys));
    };
    for (const QAction* action : actions) {
        QStringList keys;
        for (const auto& key : action->shortcuts())
            keys << key.toString(QKeySequence::NativeText);
        if (!keys.isEmpty())
            add(action->text(), keys.join(QStringLiteral(", ")));
    }
    add(tr("Next pane, previous pane"), QStringLiteral("F6, Shift+F6"));
    add(tr("Menu"), QStringLiteral("F10"));
    add(tr("Walk through the parts"), QStringLiteral("Tab, Shift+Tab"));
    add(tr("To the nearest part"), tr("Arrows"));
    add(tr("Move the selection one grid step"), tr("Shift+Arrows"));
    add(tr("Pan"), tr("Space and drag, middle button, wheel"));
    add(tr("Zoom about the pointer"), tr("Ctrl+Wheel"));
    add(tr("Time slider: 1 s, 10 s, ends"), tr("Arrows, Page keys, Home and End"));
    list->header()->setSectionResizeMode(0, QHeaderView::Stretch);
    list->header()->setSectionResizeMode(1, QHeaderView::ResizeToContents);
    list->header()->setStretchLastSection(false);
    const int around = 12 * fontMetrics().averageCharWidth() + style()->pixelMetric(QStyle::PM_ScrollBarExtent);
    resize(std::max(width(), commandWidth + keyWidth + around), height());
    auto* buttons = new QDialogButtonBox;
    connect(buttons->addButton(tr("Close"), QDialogButtonBox::RejectRole), &QPushButton::clicked, this,
            &QDialog::close);
    auto* all = new QVBoxLayout(this);
    all->addWidget(list);
    all->addWidget(buttons);
}

void showAbout(QWidget* parent)
{
    QMessageBox box(parent);
    box.setWindowTitle(HelpWindow::tr("About Tapward"));
    box.setIconPixmap(look::icon(QStringLiteral("tapward")).pixmap(64, 64));
    box.setText(HelpWindow::tr("<b>Tapward %1</b>").arg(QStringLiteral(TAPWARD_VERSION)));
    box.setInformativeText(HelpWindow::tr(
        "<p>Hot-water preheat loops in recreational coaches: drawn, predicted, printed.</p>"
        "<p>Free software under the GNU General Public License, version 3 or later. It comes without any warranty.</p>"
        "<p><b>Care.</b> Water above 120 °F (49 °C) scalds. Gas appliances, 12 V wiring, pressure and drinking water "
        "can hurt. "
        "Predictions are predictions: the heater maker's instructions, local codes and licensed practice come first. "
        "Yardsticks are not a declaration of compliance; the person signing decides what applies.</p>"));
    box.addButton(HelpWindow::tr("Close"), QMessageBox::RejectRole);
    for (auto* label : box.findChildren<QLabel*>())  // every word is ours
        label->setTextFormat(Qt::RichText);
    box.exec();
}

}  // namespace tapward::app
