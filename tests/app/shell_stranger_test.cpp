// SPDX-License-Identifier: GPL-3.0-or-later
// A drawing from a stranger: every word of it may be mark-up that names a file of this machine. The folder it names is
// watched while every widget is shown, every tool tip raised, the page printed: nothing there may be opened.
#include <algorithm>
#include <QAbstractItemView>
#include <QApplication>
#include <QDialog>
#include <QDir>
#include <QDockWidget>
#include <QFile>
#include <QLabel>
#include <QMessageBox>
#include <QTemporaryDir>
#include <QTimer>
#include <QToolTip>
#include <set>
#include <sys/inotify.h>
#include <unistd.h>

#include "canvas/paint_drawing.h"
#include "panels/case_editor.h"
#include "panels/jug_dialog.h"
#include "panels/stock_dialog.h"
#include "panels/trace_dialog.h"
#include "panels_support.h"
#include "print/page.h"
#include "shell/exports.h"
#include "shell/help_window.h"
#include "shell/main_window.h"
#include "shell/window_style.h"
#include "tools/editing_canvas.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

const QString kMarkUp = QStringLiteral("<img src=t>");  // short enough for a tag; "t" lies in the current folder

/// The current folder while it lives, with the file the mark-up names, and who opens it.
class Watched {
public:
    Watched() : m_watch(inotify_init1(IN_NONBLOCK)), m_before(QDir::currentPath())
    {
        REQUIRE(m_folder.isValid());
        QFile file(m_folder.filePath(QStringLiteral("t")));
        REQUIRE(file.open(QIODevice::WriteOnly));
        file.write("not to be read");
        file.close();
        REQUIRE(inotify_add_watch(m_watch, QFile::encodeName(file.fileName()).constData(), IN_OPEN | IN_ACCESS) >= 0);
        QDir::setCurrent(m_folder.path());
    }
    ~Watched()
    {
        QDir::setCurrent(m_before);
        ::close(m_watch);
    }
    Watched(const Watched&) = delete;
    Watched& operator=(const Watched&) = delete;

    QString path(const QString& name) const { return m_folder.filePath(name); }
    /// Whether the file was opened since the last time this was asked.
    bool wasOpened() const
    {
        alignas(inotify_event) char events[4096];
        bool any = false;
        while (::read(m_watch, events, sizeof events) > 0)
            any = true;
        return any;
    }

private:
    int m_watch;
    QString m_before;
    QTemporaryDir m_folder;
};

/// The sample with mark-up in every text a file may hold.
document::Drawing hostile()
{
    auto drawing = document::load(samplePath().toStdString()).value();
    const auto fill = [](std::string& text) { text += kMarkUp.toStdString(); };
    for (auto* text : {&drawing.job.title, &drawing.job.customer, &drawing.job.coach, &drawing.job.technician,
                       &drawing.job.date, &drawing.job.revision, &drawing.job.notes})
        fill(*text);
    drawing.job.currency = kMarkUp.toStdString();
    for (auto& part : drawing.parts) {
        fill(part.tag);
        if (part.mark)
            fill(part.mark->variant), fill(part.mark->role);
        for (const auto& field : document::kindOf(part).fields)
            if (field.type == parts::FieldType::Text && field.key != "picture")
                part.entries[std::string(field.key)] = {kMarkUp.toStdString(), parts::Basis::Estimated};
        part.unknown.emplace("/later", QStringLiteral("\"%1\"").arg(kMarkUp).toStdString());
    }
    for (auto& one : drawing.cases)
        fill(one.name);
    for (const auto& part : drawing.parts)
        drawing.dismissals.push_back({"scald", part.id, kMarkUp.toStdString(), {}});
    return drawing;
}

/// A text as it comes to the screen: as a tool tip.
void raiseTip(const QString& text, QWidget* from)
{
    QToolTip::showText(QPoint(9, 9), text, from);
    QCoreApplication::processEvents();
    bool shown = false;
    for (auto* widget : QApplication::topLevelWidgets())
        if (auto* tip = qobject_cast<QLabel*>(widget); tip && tip->inherits("QTipLabel") && tip->text() == text) {
            CHECK(tip->textFormat() == Qt::PlainText);
            tip->grab();
            shown = true;
        }
    CHECK(shown);
    QToolTip::hideText();
}

/// Every label there is, every tool tip of a widget, every text of an item.
struct Walked {
    int labels = 0, marked = 0, tips = 0;
};
Walked walkAll()
{
    Walked walked;
    std::set<QString> tips;
    const auto widgets = QApplication::allWidgets();
    for (auto* widget : widgets) {
        widget->ensurePolished();
        if (const auto* label = qobject_cast<QLabel*>(widget)) {
            CAPTURE(label->text(), label->objectName());
            CHECK(label->textFormat() == Qt::PlainText);
            ++walked.labels;
            walked.marked += label->text().contains(kMarkUp) ? 1 : 0;
        }
        if (widget->toolTip().contains(kMarkUp) && tips.insert(widget->toolTip()).second)
            raiseTip(widget->toolTip(), widget);
        if (const auto* view = qobject_cast<QAbstractItemView*>(widget); view && view->model()) {
            const auto* model = view->model();
            for (int row = 0; row < std::min(model->rowCount(), 40); ++row)
                for (int column = 0; column < model->columnCount(); ++column) {
                    const QString tip = model->index(row, column).data(Qt::ToolTipRole).toString();
                    if (tip.contains(kMarkUp) && tips.size() < 60 && tips.insert(tip).second)
                        raiseTip(tip, widget);
                }
        }
    }
    walked.tips = static_cast<int>(tips.size());
    return walked;
}

}  // namespace

TEST_CASE("the watch sees what a label that guesses would read", "[shell]")
{
    const Watched folder;
    CHECK_FALSE(folder.wasOpened());
    QLabel label{kMarkUp};
    label.setTextFormat(Qt::RichText);
    label.grab();
    CHECK(folder.wasOpened());
    CHECK_FALSE(folder.wasOpened());
}

TEST_CASE("nothing a stranger's drawing names is opened, whatever of it is shown, printed or refused", "[shell]")
{
    const Watched folder;
    QApplication::setStyle(new WindowStyle);
    const auto drawing = hostile();
    const QString file = folder.path(QStringLiteral("a<img src=t>.tapward"));
    REQUIRE(document::save(drawing, file.toStdString()));

    StockStore().setPath(folder.path(QStringLiteral("stock.tapstock")));
    MainWindow window;
    window.resize(1500, 1000);
    window.show();
    REQUIRE(window.openFile(file));
    REQUIRE(waitForAnswer(window.session()));
    const auto marked = [&](const char* tag) {
        const auto* part = window.session().drawing().findTag((QString::fromLatin1(tag) + kMarkUp).toStdString());
        REQUIRE(part);
        return part->id;
    };
    for (const auto& part : window.session().drawing().parts) {
        if (part.id % 7 != 0)
            continue;
        window.session().select({part.id});
        QCoreApplication::processEvents();
    }
    window.session().select({marked("P1")});
    for (auto* dock : window.findChildren<QDockWidget*>()) {
        dock->raise();
        QCoreApplication::processEvents();
        dock->grab();
    }
    CaseEditor cases(window.session(), &window);
    StockDialog stock(window.session(), &window);
    stock.keep(kMarkUp);
    JugDialog jug(window.session(), marked("F1"), &window);
    TraceDialog trace(window.session(), &window);
    HelpWindow help(&window);
    for (QDialog* dialog : std::initializer_list<QDialog*>{&cases, &stock, &jug, &trace, &help}) {
        dialog->show();
        QCoreApplication::processEvents();
        dialog->grab();
    }
    const Walked walked = walkAll();
    CHECK(walked.labels > 60);
    CHECK(walked.marked > 2);
    CHECK(walked.tips > 10);
    window.grab();
    CHECK_FALSE(folder.wasOpened());

    // What is refused is named in a box, and by the tray of the start page.
    std::string unknown = document::write(drawing);
    const std::string kind = "\"kind\": \"tee\"";
    unknown.replace(unknown.find(kind), kind.size(), QStringLiteral("\"kind\": \"a%1\"").arg(kMarkUp).toStdString());
    QFile other(folder.path(QStringLiteral("other.tapward")));
    REQUIRE(other.open(QIODevice::WriteOnly));
    other.write(QByteArray::fromStdString(unknown));
    other.close();
    bool asked = false;
    QTimer closer;
    QObject::connect(&closer, &QTimer::timeout, [&] {
        auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
        if (!box)
            return;
        asked = true;
        CHECK(box->text().contains(kMarkUp));
        for (const auto* label : box->findChildren<QLabel*>())
            CHECK(label->textFormat() == Qt::PlainText);
        box->grab();
        box->reject();
    });
    closer.start(20);
    CHECK_FALSE(window.openFile(other.fileName()));
    closer.stop();
    CHECK(asked);
    CHECK_FALSE(folder.wasOpened());

    // Paper and files.
    const auto prediction = window.session().prediction();
    REQUIRE(prediction);
    QByteArray pdf;
    const auto& findings = window.session().findings();
    CHECK_FALSE(print::printPagePdf(drawing,
                                    report::page(drawing, *prediction, *window.session().assessment(), findings),
                                    findings, UnitSystem::Us, print::PaperSize::Letter, pdf));
    CHECK(pdf.size() > 10000);
    CHECK_FALSE(folder.wasOpened());
    StockStore().setPath({});
}
