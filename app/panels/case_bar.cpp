// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/case_bar.h"

#include <QButtonGroup>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>

#include "look/spacing.h"
#include "panels/choice_button.h"
#include "panels/flow_layout.h"
#include "panels/icons.h"
#include "panels/quiet_combo.h"
#include "panels/say.h"

namespace tapward::app {

namespace {

/// Buttons of which one is down, with their name before them.
QButtonGroup* addSwitch(QWidget* owner, QHBoxLayout* line, const QString& name,
                        const QList<QPair<QString, int>>& choices, const QStringList& tips)
{
    auto* group = new QButtonGroup(owner);
    group->setExclusive(true);
    auto* label = new QLabel(name);
    line->addWidget(label);
    auto* row = new QHBoxLayout;
    row->setSpacing(0);
    for (qsizetype i = 0; i < choices.size(); ++i) {
        auto* button = new ChoiceButton;
        button->setText(choices[i].first);
        button->setCheckable(true);
        button->setAccessibleName(CaseBar::tr("%1: %2").arg(name, choices[i].first));
        button->setToolTip(tips.value(i));
        button->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Expanding);
        row->addWidget(button);
        group->addButton(button, choices[i].second);
    }
    line->addLayout(row);
    return group;
}

}  // namespace

UnitsSwitch::UnitsSwitch(Session& session, QWidget* parent) : QWidget(parent)
{
    auto* line = new QHBoxLayout(this);
    line->setContentsMargins(look::kNext, 0, look::kNext, 0);
    line->setSpacing(look::kNext);
    auto* units =
        addSwitch(this, line, CaseBar::tr("Units"),
                  {{CaseBar::tr("US"), int(UnitSystem::Us)}, {CaseBar::tr("Metric"), int(UnitSystem::Metric)}},
                  {CaseBar::tr("Gallons, feet, °F, psi"), CaseBar::tr("Liters, meters, °C, kPa")});
    const auto follow = [units, &session] { units->button(int(session.units()))->setChecked(true); };
    connect(units, &QButtonGroup::idClicked, this,
            [&session](int id) { session.setUnits(static_cast<UnitSystem>(id)); });
    connect(&session, &Session::viewChanged, this, follow);
    follow();
}

CaseBar::CaseBar(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_case(new QuietCombo), m_stage(new QuietCombo), m_keep(new QToolButton)
{
    setAccessibleName(tr("Case and view"));
    auto* all = new FlowLayout(this);
    all->setContentsMargins(look::kNext, look::kNear, look::kNext, look::kNear);
    all->setSpacing(look::kNext);
    QHBoxLayout* line = nullptr;
    const auto beginGroup = [&] {
        auto* group = new QWidget;
        line = new QHBoxLayout(group);
        line->setContentsMargins(0, 0, 0, 0);
        line->setSpacing(look::kNext);
        all->addWidget(group);
    };
    beginGroup();
    const auto addLabel = [&](const QString& text, QWidget* buddy) {
        auto* label = new QLabel(text);
        label->setBuddy(buddy);
        label->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Preferred);  // beside its box, however much room there is
        line->addWidget(label);
    };
    addLabel(tr("Case"), m_case);
    m_case->setAccessibleName(tr("Case"));
    m_case->setToolTip(tr("The script of draws and button presses that is predicted"));
    m_case->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    static_cast<QComboBox*>(m_case)->setMinimumContentsLength(14);
    m_case->setMaximumWidth(fontMetrics().averageCharWidth() * 48);
    line->addWidget(m_case, 100);
    auto* edit = new QToolButton;
    edit->setIcon(look::icon(QStringLiteral("edit")));
    edit->setToolTip(tr("Edit Cases\u2026"));
    edit->setAccessibleName(tr("Edit cases"));
    line->addWidget(edit);
    m_keep->setObjectName(QStringLiteral("keepCase"));
    m_keep->setText(tr("Keep as Case"));
    m_keep->setToolTip(tr("Make the script that is shown a case of this drawing"));
    line->addWidget(m_keep);
    line->addStretch(1);
    beginGroup();
    m_view = addSwitch(this, line, tr("Show"),
                       {{sayView(document::View::Before), int(document::View::Before)},
                        {sayView(document::View::After), int(document::View::After)},
                        {sayView(document::View::Both), int(document::View::Both)}},
                       {tr("The coach as it is today"), tr("The coach when the job is done"),
                        tr("Both: added parts heavy, removed parts crossed")});
    beginGroup();
    addLabel(tr("New parts are"), m_stage);
    m_stage->setAccessibleName(tr("Stage of new parts"));
    for (const auto stage : {document::Stage::Existing, document::Stage::Added})
        m_stage->addItem(sayStage(stage), int(stage));
    static_cast<QComboBox*>(m_stage)->setMinimumContentsLength(8);
    line->addWidget(m_stage);
    m_newParts = m_stage->parentWidget();

    connect(m_case, &QComboBox::activated, this, [this] { m_session.setCaseName(m_case->currentData().toString()); });
    connect(m_keep, &QToolButton::clicked, this, [this] { m_session.keepPlayed(); });
    connect(m_stage, &QComboBox::activated, this,
            [this](int i) { m_session.setNewStage(static_cast<document::Stage>(m_stage->itemData(i).toInt())); });
    connect(m_view, &QButtonGroup::idClicked, this,
            [this](int id) { m_session.setView(static_cast<document::View>(id)); });
    connect(edit, &QToolButton::clicked, this, &CaseBar::editCasesRequested);
    connect(&session, &Session::viewChanged, this, &CaseBar::refresh);
    connect(&session, &Session::caseChanged, this, &CaseBar::refreshCases);
    connect(&session, &Session::changed, this, &CaseBar::refreshCases);
    refresh();
    refreshCases();
}

void CaseBar::offerStage(bool offered) { m_newParts->setVisible(offered); }

void CaseBar::refresh()
{
    if (auto* button = m_view->button(int(m_session.view())))
        button->setChecked(true);
    m_stage->setCurrentIndex(m_stage->findData(int(m_session.newStage())));
}

void CaseBar::refreshCases()
{
    QStringList names, texts;
    for (const auto& one : m_session.drawing().cases)
        names << plain(one.name);
    texts = names;
    if (const auto* played = m_session.played()) {
        names << plain(played->name);
        texts << tr("%1 (not kept)").arg(names.last());
    }
    QStringList shown;
    for (int i = 0; i < m_case->count(); ++i)
        shown << m_case->itemText(i);
    if (shown != texts) {
        m_case->clear();
        for (qsizetype i = 0; i < names.size(); ++i)
            m_case->addItem(texts[i], names[i]);
    }
    m_keep->setVisible(m_session.played() != nullptr);
    m_case->setPlaceholderText(tr("No cases yet"));
    m_case->setCurrentIndex(static_cast<int>(names.indexOf(m_session.caseName())));
    m_case->setEnabled(!names.isEmpty());
}

}  // namespace tapward::app
