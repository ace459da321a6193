// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/jug_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QEvent>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/say.h"
#include "panels/value_edit.h"
#include "session/session.h"
#include "study/jug_pressure.h"

namespace tapward::app {

namespace {

QLabel* wrapped(const QString& text = {})
{
    auto* label = new QLabel(text);
    label->setWordWrap(true);
    return label;
}

}  // namespace

JugDialog::JugDialog(Session& session, document::PartId part, QWidget* parent)
    : QDialog(parent), m_session(session), m_part(part), m_grid(new QGridLayout),
      m_pressure(new ValueEdit(Quantity::Pressure, session.units())), m_fedBy(new QComboBox), m_result(wrapped()),
      m_notes(wrapped()), m_complaint(wrapped()), m_ok(nullptr)
{
    const UnitSystem units = session.units();
    setWindowTitle(tr("Flow of %1 by Jug and Stopwatch").arg(sayTag(session.drawing(), part)));
    auto* all = new QVBoxLayout(this);
    all->addWidget(wrapped(tr("Open the outlet fully, let the flow settle, then time how long a jug of known volume "
                              "takes to fill. Three tries or more show how steady it is.")));
    m_grid->addWidget(new QLabel(quantityHead(tr("Volume"), Quantity::Volume, units)), 0, 1);
    m_grid->addWidget(new QLabel(quantityHead(tr("Time"), Quantity::Time, units)), 0, 2);
    m_grid->addWidget(new QLabel(tr("Flow")), 0, 3);
    m_grid->setColumnStretch(1, 1);
    m_grid->setColumnStretch(2, 1);
    m_grid->setColumnMinimumWidth(3, fontMetrics().horizontalAdvance(QStringLiteral("00.00 L/min  ")));
    for (int i = 0; i < 3; ++i)
        addLine();
    all->addLayout(m_grid);
    auto* more = new QPushButton(tr("&Add Try"));
    more->setAutoDefault(false);
    connect(more, &QPushButton::clicked, this, [this] {
        addLine();
        m_lines.back().volume->setFocus();
    });
    auto* buttonLine = new QHBoxLayout;
    buttonLine->addWidget(more);
    buttonLine->addStretch();
    all->addLayout(buttonLine);

    auto* pressureLabel = new QLabel(quantityHead(tr("&Pressure while it ran"), Quantity::Pressure, units));
    pressureLabel->setBuddy(m_pressure);
    m_pressure->setAccessibleName(tr("Pressure while it ran"));
    m_pressure->setMayBeEmpty(true, tr("not noted"));
    auto* pressureLine = new QHBoxLayout;
    pressureLine->addWidget(pressureLabel);
    pressureLine->addWidget(m_pressure, 1);
    all->addLayout(pressureLine);
    auto* fedLabel = new QLabel(tr("Not noted: &fed by"));
    fedLabel->setBuddy(m_fedBy);
    m_fedBy->setAccessibleName(tr("What fed the outlet while it ran"));
    m_fedBy->setToolTip(tr("Where no gauge was read, the pressure at the outlet is reckoned from the drawing."));
    for (const auto supply : study::jugSupplies(session.drawing(), part))
        m_fedBy->addItem(supply == document::ActionKind::UsePump ? tr("Demand pump") : tr("City water"),
                         static_cast<int>(supply));
    auto* fedLine = new QHBoxLayout;
    fedLine->addWidget(fedLabel);
    fedLine->addWidget(m_fedBy, 1);
    all->addLayout(fedLine);
    fedLabel->setVisible(m_fedBy->count() > 0);
    m_fedBy->setVisible(m_fedBy->count() > 0);
    connect(m_fedBy, &QComboBox::currentIndexChanged, this, &JugDialog::refresh);
    connect(m_pressure, &QLineEdit::textEdited, this, &JugDialog::refresh);
    connect(m_pressure, &ValueEdit::committed, this, [this](double si) {
        m_pressure->setValue(si);
        refresh();
    });
    connect(m_pressure, &ValueEdit::cleared, this, [this] {
        m_pressure->setNone();
        refresh();
    });
    connect(m_pressure, &ValueEdit::complaint, this, [this](const QString& text) {
        m_complaint->setText(text.isEmpty() ? text : QStringLiteral("\u25B2 %1").arg(text));
    });

    m_result->setFont(look::strongFont(font()));
    all->addWidget(m_result);
    all->addWidget(m_notes);
    m_complaint->setObjectName(QStringLiteral("complaint"));
    all->addWidget(m_complaint);
    all->addWidget(wrapped(QStringLiteral("\u25C6 %1")
                               .arg(tr("Water can be hot enough to burn: measure with the heater off or on the cold "
                                       "side, and keep hands out of "
                                       "the stream."))));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
    m_ok = buttons->button(QDialogButtonBox::Ok);
    m_ok->setText(tr("&Use as Measured Flow"));
    buttons->button(QDialogButtonBox::Cancel)->setText(tr("Cancel"));  // Qt's own texts may not be installed
    connect(buttons, &QDialogButtonBox::accepted, this, &JugDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &JugDialog::reject);
    all->addWidget(buttons);
    setMinimumWidth(fontMetrics().averageCharWidth() * 56);
    m_lines.front().volume->setFocus();
    refresh();
}

void JugDialog::addLine()
{
    const int number = static_cast<int>(m_lines.size()) + 1;
    const UnitSystem units = m_session.units();
    Line line{new ValueEdit(Quantity::Volume, units, this), new ValueEdit(Quantity::Time, units, this), new QLabel};
    line.volume->setAccessibleName(tr("Volume of try %1").arg(number));
    line.seconds->setAccessibleName(tr("Seconds of try %1").arg(number));
    for (auto* edit : {line.volume, line.seconds}) {
        edit->setMayBeEmpty(true);
        connect(edit, &ValueEdit::committed, this, [this, edit](double si) {
            edit->setValue(si);
            if (edit == m_lines.front().volume)  // the jug is the same one each time
                for (const auto& other : m_lines)
                    if (!other.volume->value())
                        other.volume->setValue(si);
            refresh();
        });
        connect(edit, &ValueEdit::cleared, this, [this, edit] {
            edit->setNone();
            refresh();
        });
        connect(edit, &ValueEdit::complaint, this, [this](const QString& text) {
            m_complaint->setText(text.isEmpty() ? text : QStringLiteral("\u25B2 %1").arg(text));
        });
    }
    m_grid->addWidget(new QLabel(tr("Try %1").arg(number)), number, 0);
    m_grid->addWidget(line.volume, number, 1);
    m_grid->addWidget(line.seconds, number, 2);
    m_grid->addWidget(line.flow, number, 3);
    if (!m_lines.empty()) {
        const auto& before = m_lines.back();
        if (before.volume->value())
            line.volume->setValue(*before.volume->value());
        setTabOrder(before.seconds, line.volume);
    }
    setTabOrder(line.volume, line.seconds);
    m_lines.push_back(line);
}

std::vector<document::JugTry> JugDialog::tries() const
{
    std::vector<document::JugTry> all;
    for (const auto& line : m_lines)
        if (line.volume->value() && line.seconds->value())
            all.push_back({*line.volume->value(), *line.seconds->value()});
    return all;
}

/// The pressure noted, or else the one the drawing leaves at the outlet.
void JugDialog::takePressure(const Result<document::JugFlow>& flow)
{
    if (const auto noted = m_pressure->value(); noted || !flow || m_fedBy->count() == 0) {
        m_taken = noted ? std::optional(document::JugPressure{*noted}) : std::nullopt;
        m_noPressure.reset();
        m_reckonedFlow_m3s = 0;
        return;
    }
    const auto supply = static_cast<document::ActionKind>(m_fedBy->currentData().toInt());
    if (m_reckonedFlow_m3s == flow->flow_m3s && m_reckonedFor == supply)
        return;
    m_reckonedFlow_m3s = flow->flow_m3s;
    m_reckonedFor = supply;
    const auto pressure = study::jugPressure(m_session.drawing(), m_part, flow->flow_m3s, supply);
    m_taken = pressure ? std::optional(*pressure) : std::nullopt;
    m_noPressure = pressure ? std::nullopt : std::optional(pressure.error());
}

void JugDialog::refresh()
{
    const UnitSystem units = m_session.units();
    for (const auto& line : m_lines) {
        const bool whole = line.volume->value() && line.seconds->value();
        const auto one = whole ? document::jugFlow({{*line.volume->value(), *line.seconds->value()}})
                               : Result<document::JugFlow>(document::JugFlow{});
        line.flow->setText(whole && one ? sayMeasure(one->flow_m3s, Quantity::Flow, units) : QString());
    }
    const auto all = tries();
    const auto flow = document::jugFlow(all);
    takePressure(flow);
    m_fedBy->setEnabled(!m_pressure->value());
    m_ok->setEnabled(flow.has_value());
    m_notes->clear();
    if (!flow) {
        m_result->setText(all.empty() ? QString() : sayProblem(flow.error(), units));
        return;
    }
    QString words = tr("Flow: %1").arg(sayMeasure(flow->flow_m3s, Quantity::Flow, units));
    if (flow->tries > 1)
        words = tr("Flow: %1, mean of %2 tries from %3 to %4 (standard deviation %5)")
                    .arg(sayMeasure(flow->flow_m3s, Quantity::Flow, units))
                    .arg(flow->tries)
                    .arg(sayMeasure(flow->least_m3s, Quantity::Flow, units),
                         sayMeasure(flow->most_m3s, Quantity::Flow, units),
                         sayMeasure(flow->deviation_m3s, Quantity::Flow, units));
    m_result->setText(words);
    QStringList notes;
    if (m_noPressure)
        notes << QStringLiteral("\u25C6 %1").arg(sayProblem(*m_noPressure, units));
    for (const auto& note : document::jugNotes(m_session.drawing(), m_part, *flow, m_taken))
        notes << QStringLiteral("\u25C6 %1").arg(sayMessage(note, units));
    m_notes->setText(notes.join(QLatin1Char('\n')));
}

bool JugDialog::event(QEvent* event)
{
    const bool done = QDialog::event(event);
    // The notes come and go, and a layout of wrapped texts would rather squash the lines than ask for more height.
    if (event->type() == QEvent::LayoutRequest || event->type() == QEvent::Resize)
        setMinimumHeight(layout()->totalHeightForWidth(width()));
    return done;
}

void JugDialog::accept()
{
    setFocus();  // what is being typed counts
    const auto flow = document::jugFlow(tries());
    takePressure(flow);
    for (const auto& line : m_lines)
        if (line.volume->isPending() || line.seconds->isPending())
            return;  // a text that cannot be read: its complaint stands below
    if (m_pressure->isPending())
        return;
    const auto refused = flow ? m_session.perform(document::setJugFlow(m_session.drawing(), m_part, *flow, m_taken))
                              : std::optional(flow.error());
    if (refused) {
        m_complaint->setText(QStringLiteral("\u25B2 %1").arg(sayProblem(*refused, m_session.units())));
        return;
    }
    QDialog::accept();
}

}  // namespace tapward::app
