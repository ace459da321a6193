// SPDX-License-Identifier: GPL-3.0-or-later
// Proposing loops, swapping their variants, and the assemblies a person keeps.
#include <QActionGroup>
#include <QInputDialog>
#include <QMenu>
#include <QMessageBox>
#include <QPushButton>
#include <QStatusBar>

#include "session/assembly_text.h"
#include "session/own_assemblies.h"
#include "shell/main_window.h"
#include "tools/assembly_hand.h"
#include "tools/editing_canvas.h"
#include "tray/assembly_list.h"
#include "tray/tray.h"

namespace tapward::app {

void MainWindow::buildAssemblies()
{
    auto* list = m_tray->assemblies();
    connect(list, &AssemblyList::variantPicked, m_hand, &AssemblyHand::startVariant);
    connect(list, &AssemblyList::ownPicked, m_hand, &AssemblyHand::startOwn);
    connect(list, &AssemblyList::deleteRequested, this, [this, list](const QString& file, const QString& title) {
        // A file in the trash is not taken back by undo, so it is asked.
        QMessageBox box(QMessageBox::Question, tr("Delete Assembly"),
                        tr("Delete the assembly \u201c%1\u201d?").arg(title), QMessageBox::NoButton, this);
        box.setInformativeText(tr("Drawings it was put into keep their parts."));
        auto* go = box.addButton(tr("Delete Assembly"), QMessageBox::DestructiveRole);
        box.setDefaultButton(box.addButton(tr("Keep It"), QMessageBox::RejectRole));
        box.exec();
        if (box.clickedButton() != go)
            return;
        if (const auto problem = OwnAssemblies().remove(file))
            complain(tr("Delete Assembly"), *problem);
        list->refresh();
    });
}

void MainWindow::addAssemblyMenus(QMenu* menu)
{
    menu->addSeparator();
    auto* proposeMenu = menu->addMenu(tr("&Propose Loop"));
    auto* swapMenu = menu->addMenu(tr("S&wap Variant"));
    auto* swaps = new QActionGroup(this);
    for (const auto& variant : document::variants()) {
        if (variant.pumps == document::PumpSet::One && variant.way != document::ReturnWay::ColdLine) {
            proposeMenu->addSeparator();
            swapMenu->addSeparator();
        }
        const QString id = QString::fromStdString(std::string(document::idOf(variant)));
        proposeMenu->addAction(variantTitle(variant), this, [this, id] { m_hand->startVariant(id); });
        auto* swap = swapMenu->addAction(variantTitle(variant), this, [this, variant] { m_hand->swapFor(variant); });
        swap->setCheckable(true);
        swap->setData(id);
        swaps->addAction(swap);
    }
    m_needDrawing << proposeMenu->menuAction();
    m_canvas->addContextAction(swapMenu->menuAction());
    const auto check = [this, swapMenu, swaps] {
        const auto now = document::proposed(m_session.drawing());
        // With a loop drawn by hand the menu stays open, so that choosing says why it cannot be and what to do.
        swapMenu->menuAction()->setEnabled(document::hasLoop(m_session.drawing()));
        for (auto* action : swaps->actions())
            action->setChecked(now && action->data().toString().toStdString() == document::idOf(*now));
    };
    connect(&m_session, &Session::changed, this, check);
    connect(swapMenu, &QMenu::aboutToShow, this, check);
    check();
    auto* keep = command(tr("&Keep as Assembly\u2026"), {}, [this] { keepAssembly(); });
    m_needDrawing << keep;
    menu->addAction(keep);
    m_canvas->addContextAction(keep);
}

void MainWindow::keepAssembly()
{
    QInputDialog ask(this);
    ask.setWindowTitle(tr("Keep as Assembly"));
    ask.setLabelText(tr("Name of the assembly:"));
    ask.setOkButtonText(tr("Keep Assembly"));
    ask.setCancelButtonText(tr("Cancel"));
    if (m_session.selection().empty()) {
        complain(tr("Keep as Assembly"), {"Nothing is selected.", "Select the parts to keep first.", {}});
        return;
    }
    if (ask.exec() != QDialog::Accepted)
        return;
    const auto kept = OwnAssemblies().keep(ask.textValue(), m_session.drawing(), m_session.selection());
    if (!kept) {
        complain(tr("Keep as Assembly"), kept.error());
        return;
    }
    m_tray->assemblies()->refresh();
    statusBar()->showMessage(tr("Kept. It is in the tray under My assemblies."));
}

}  // namespace tapward::app
