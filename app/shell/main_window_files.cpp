// SPDX-License-Identifier: GPL-3.0-or-later
// Opening, saving, closing, recovering.
#include <QAccessible>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QLocale>
#include <QMessageBox>
#include <QPushButton>
#include <QSettings>
#include <QStatusBar>
#include <QTimer>

#include "document/file.h"
#include "panels/say.h"
#include "session/work_folder.h"
#include "shell/first_job.h"
#include "shell/main_window.h"
#include "shell/start_page.h"
#include "tools/editing_canvas.h"

namespace tapward::app {

void MainWindow::complain(const QString& title, const Problem& problem)
{
    QMessageBox box(QMessageBox::Warning, title, sayMessage(problem.what, m_session.units()), QMessageBox::NoButton,
                    this);
    box.setInformativeText(sayMessage(problem.remedy, m_session.units()));
    if (!problem.where.empty())
        box.setDetailedText(tr("Place: %1").arg(plain(problem.where)));
    box.addButton(tr("Close"), QMessageBox::RejectRole);
    box.exec();
}

void MainWindow::opened()
{
    showDrawing(true);
    refreshTitle();
    refreshState();
    // Once the panes have their places: the view has its final size only then.
    QTimer::singleShot(0, m_canvas, [this] { m_canvas->fitDrawing(); });
}

bool MainWindow::openFile(const QString& path)
{
    furnish();
    if (!mayClose())
        return false;
    FileGuard guard;
    QString holder;
    const bool same =
        QFileInfo(path).absoluteFilePath() == QFileInfo(m_session.path()).absoluteFilePath() && m_hasDrawing;
    if (!same && !guard.take(path, &holder)) {
        QMessageBox box(QMessageBox::Warning, tr("Open Drawing"),
                        tr("%1 is open in another window.").arg(QFileInfo(path).fileName()), QMessageBox::NoButton,
                        this);
        box.setInformativeText(tr("Whoever saves last would overwrite the other's work (%1).").arg(holder));
        auto* go = box.addButton(tr("Open Anyway"), QMessageBox::AcceptRole);
        auto* stay = box.addButton(tr("Do Not Open"), QMessageBox::RejectRole);
        box.setDefaultButton(stay);
        box.exec();
        if (box.clickedButton() != go)
            return false;
    }
    if (const auto problem = m_session.open(path)) {
        complain(tr("Open Drawing"), *problem);
        return false;
    }
    m_autosave->forget();
    if (!same)
        m_guard = std::move(guard);
    m_stamp.note(path);
    m_suggestedPath.clear();
    RecentFiles().add(path);
    keepWorkFolder(path);
    opened();
    return true;
}

bool MainWindow::openSample(const QString& resource)
{
    furnish();
    if (!mayClose())
        return false;
    QFile file(resource);
    if (!file.open(QIODevice::ReadOnly))
        return false;
    auto drawing = document::read(file.readAll().toStdString());
    if (!drawing) {
        complain(tr("Open Sample"), drawing.error());
        return false;
    }
    m_autosave->forget();
    m_guard.release();
    m_suggestedPath.clear();
    m_session.startNew(std::move(*drawing));
    opened();
    return true;
}

document::Drawing MainWindow::emptyDrawing()
{
    document::Drawing drawing;
    document::Case first;
    first.name = tr("Preheat run").toStdString();
    drawing.cases.push_back(std::move(first));
    return drawing;
}

void MainWindow::newDrawing()
{
    furnish();
    if (!mayClose())
        return;
    m_autosave->forget();
    m_guard.release();
    m_suggestedPath.clear();
    m_session.startNew(emptyDrawing());
    opened();
    showArea(QStringLiteral("coach"));
}

void MainWindow::openDialog()
{
    QFileDialog dialog(this, tr("Open Drawing"), workFolder(), tr("Tapward drawing (*.tapward)"));
    dialog.setFileMode(QFileDialog::ExistingFile);
    if (dialog.exec() == QDialog::Accepted && !dialog.selectedFiles().isEmpty())
        openFile(dialog.selectedFiles().constFirst());
}

bool MainWindow::save()
{
    if (m_session.path().isEmpty())
        return saveAs();
    if (m_stamp.changed(m_session.path())) {
        QMessageBox box(
            QMessageBox::Warning, tr("Save Drawing"),
            tr("%1 was changed by somebody else since it was opened here.").arg(QFileInfo(m_session.path()).fileName()),
            QMessageBox::NoButton, this);
        box.setInformativeText(tr("Saving over it loses what was changed there."));
        const auto* over = box.addButton(tr("Save Over It"), QMessageBox::DestructiveRole);
        auto* other = box.addButton(tr("Save Under Another Name…"), QMessageBox::AcceptRole);
        auto* stay = box.addButton(tr("Keep Editing"), QMessageBox::RejectRole);
        box.setDefaultButton(other);
        box.setEscapeButton(stay);
        box.exec();
        if (box.clickedButton() == other)
            return saveAs();
        if (box.clickedButton() != over)
            return false;
    }
    if (const auto problem = m_session.save(m_session.path())) {
        complain(tr("Save Drawing"), *problem);
        return false;
    }
    m_stamp.note(m_session.path());
    m_autosave->forget();
    RecentFiles().add(m_session.path());
    statusBar()->showMessage(tr("Saved %1").arg(QFileInfo(m_session.path()).fileName()), 4000);
    return true;
}

bool MainWindow::saveAs()
{
    QString start = m_session.path().isEmpty() ? m_suggestedPath : m_session.path();
    if (start.isEmpty()) {
        QString name = plain(m_session.drawing().job.title).simplified().toLower();
        name.replace(QLatin1Char(' '), QLatin1Char('-')).remove(QLatin1Char('/'));
        start = workFolder() + QLatin1Char('/') + (name.isEmpty() ? tr("untitled") : name) + QStringLiteral(".tapward");
    }
    QFileDialog dialog(this, tr("Save Drawing As"), QFileInfo(start).absolutePath(), tr("Tapward drawing (*.tapward)"));
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(QStringLiteral("tapward"));
    dialog.selectFile(QFileInfo(start).fileName());
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty())
        return false;
    const QString path = dialog.selectedFiles().constFirst();
    if (const auto problem = m_session.save(path)) {
        complain(tr("Save Drawing"), *problem);
        return false;
    }
    m_guard.take(path);
    m_stamp.note(path);
    m_suggestedPath.clear();
    m_autosave->forget();
    RecentFiles().add(path);
    keepWorkFolder(path);
    refreshTitle();
    return true;
}

bool MainWindow::mayClose()
{
    if (!m_hasDrawing || !m_session.isModified())
        return true;
    const QString name = m_session.path().isEmpty() ? tr("this drawing") : QFileInfo(m_session.path()).fileName();
    QMessageBox box(QMessageBox::Question, tr("Unsaved Changes"), tr("Save the changes to %1?").arg(name),
                    QMessageBox::NoButton, this);
    box.setInformativeText(tr("Changes that are not saved are lost."));
    auto* keep = box.addButton(tr("Save Drawing"), QMessageBox::AcceptRole);
    auto* drop = box.addButton(tr("Discard Changes"), QMessageBox::DestructiveRole);
    auto* stay = box.addButton(tr("Keep Editing"), QMessageBox::RejectRole);
    box.setDefaultButton(static_cast<QPushButton*>(keep));
    box.setEscapeButton(stay);
    box.exec();
    if (box.clickedButton() == keep)
        return save();
    return box.clickedButton() == drop;
}

void MainWindow::buildKeeping()
{
    m_unkept = new QLabel;
    m_unkept->setObjectName(QStringLiteral("unkept"));
    m_unkept->setTextFormat(Qt::PlainText);
    statusBar()->insertPermanentWidget(0, m_unkept);
    m_unkept->hide();
    connect(m_autosave.get(), &Autosave::failed, this, [this](const QString& reason) {
        m_unkept->setText(tr("No copy is kept: %1").arg(reason));
        m_unkept->setToolTip(tr("Unsaved changes would be lost if the program ended now: save the drawing. A copy in "
                                "%1 is tried again every few seconds.")
                                 .arg(stateFolder()));
        m_unkept->show();
        QAccessibleEvent alert(m_unkept, QAccessible::Alert);
        QAccessible::updateAccessibility(&alert);
    });
    connect(m_autosave.get(), &Autosave::resumed, this, [this] {
        m_unkept->hide();
        statusBar()->showMessage(tr("Copies of unsaved work are kept again."), 8000);
    });
}

void MainWindow::offerRecovery()
{
    for (const auto& leftover : Autosave::leftovers(stateFolder() + QStringLiteral("/autosave"))) {
        if (leftover.unreadable) {
            offerUnreadable(leftover);
            continue;
        }
        const QLocale locale;
        const QString name = leftover.original.isEmpty() ? tr("a drawing that was never saved")
                                                         : QFileInfo(leftover.original).fileName();
        QMessageBox box(QMessageBox::Question, tr("Restore Unsaved Work"),
                        tr("Unsaved changes to %1 were found.").arg(name), QMessageBox::NoButton, this);
        QString times = tr("Last change: %1.").arg(locale.toString(leftover.changed, QLocale::ShortFormat));
        if (leftover.saved.isValid())
            times +=
                QLatin1Char(' ') + tr("Last saved: %1.").arg(locale.toString(leftover.saved, QLocale::ShortFormat));
        box.setInformativeText(times + QLatin1Char('\n')
                               + tr("Copies of unsaved work are kept in %1.").arg(stateFolder()));
        auto* again = box.addButton(tr("Restore"), QMessageBox::AcceptRole);
        QAbstractButton* saved =
            leftover.saved.isValid() ? box.addButton(tr("Open Last Saved"), QMessageBox::ActionRole) : nullptr;
        auto* drop = box.addButton(tr("Discard"), QMessageBox::DestructiveRole);
        auto* later = box.addButton(tr("Decide Later"), QMessageBox::RejectRole);
        box.setDefaultButton(again);
        box.setEscapeButton(later);
        box.exec();
        if (box.clickedButton() == again) {
            if (restore(leftover))
                Autosave::remove(leftover);
            return;
        }
        if (saved && box.clickedButton() == saved) {
            if (openFile(leftover.original))
                Autosave::remove(leftover);
            return;
        }
        if (box.clickedButton() == drop)
            Autosave::remove(leftover);
    }
}

void MainWindow::offerUnreadable(const Leftover& leftover)
{
    const QString name =
        leftover.original.isEmpty() ? tr("a drawing that was never saved") : QFileInfo(leftover.original).fileName();
    const QLocale locale;
    QMessageBox box(QMessageBox::Warning, tr("Restore Unsaved Work"),
                    tr("Unsaved changes to %1 were found, but the copy cannot be read.").arg(name),
                    QMessageBox::NoButton, this);
    box.setInformativeText(sayMessage(leftover.unreadable->what, m_session.units()) + QLatin1Char('\n')
                           + tr("Last change: %1.").arg(locale.toString(leftover.changed, QLocale::ShortFormat))
                           + QLatin1Char('\n')
                           + tr("It is kept as %1. It is plain text: whoever knows the format, or a newer Tapward, may "
                                "save what is in it.")
                                 .arg(leftover.file));
    if (!leftover.unreadable->where.empty())
        box.setDetailedText(tr("Place: %1").arg(plain(leftover.unreadable->where)));
    const auto* move = box.addButton(tr("Save Copy As…"), QMessageBox::AcceptRole);
    const auto* drop = box.addButton(tr("Discard"), QMessageBox::DestructiveRole);
    auto* later = box.addButton(tr("Decide Later"), QMessageBox::RejectRole);
    box.setDefaultButton(later);
    box.setEscapeButton(later);
    box.exec();
    if (box.clickedButton() == drop)
        Autosave::remove(leftover);
    if (box.clickedButton() != move)
        return;
    const QString start = leftover.original.isEmpty() ? leftover.file : leftover.original;
    QFileDialog dialog(this, tr("Save Copy As"), workFolder(), tr("Tapward drawing (*.tapward)"));
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(QStringLiteral("tapward"));
    dialog.selectFile(tr("%1-copy").arg(QFileInfo(start).completeBaseName()) + QStringLiteral(".tapward"));
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty())
        return;
    QFile copy(leftover.file);
    const bool open = copy.open(QIODevice::ReadOnly);
    const QByteArray bytes = copy.readAll();
    if (!open || bytes.size() != copy.size())
        complain(tr("Save Copy As"), {"The copy cannot be read.", "It is kept where it was.", {}});
    else if (const auto problem = writeWholeFile(dialog.selectedFiles().constFirst(), bytes))
        complain(tr("Save Copy As"), *problem);
    else
        Autosave::remove(leftover);
}

bool MainWindow::restore(const Leftover& leftover)
{
    furnish();
    const bool onFile = leftover.saved.isValid();
    if (onFile) {
        if (!openFile(leftover.original))
            return false;
    } else {
        // Keys of the file as a whole are no matter of edits: they come with the ground the copy is put on.
        document::Drawing ground;
        ground.unknown = leftover.drawing.unknown;
        m_session.startNew(std::move(ground));
        m_suggestedPath = leftover.original;
    }
    // As an edit, so that it counts as unsaved and can be undone back to what was saved.
    auto edit = replaceDrawing(m_session.drawing(), leftover.drawing, Message("Restore unsaved work"));
    if (const auto problem = m_session.perform(std::move(edit))) {
        m_suggestedPath = leftover.original;
        m_session.startNew(leftover.drawing);
    }
    opened();
    m_autosave->saveNow();
    return true;
}

void MainWindow::exportTo(ExportKind kind)
{
    const QString path = exportWithDialog(m_session, kind, this);
    if (path.isEmpty())
        return;
    statusBar()->showMessage(tr("Written: %1").arg(QFileInfo(path).fileName()), 4000);
    if (kind == ExportKind::PagePdf)
        m_firstJob->sawPage();
}

}  // namespace tapward::app
