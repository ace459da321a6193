// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/floor_plan_box.h"

#include <QBuffer>
#include <QDialog>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QImageReader>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "document/floor_plan.h"
#include "panels/say.h"
#include "panels/trace_dialog.h"
#include "panels/value_edit.h"
#include "session/session.h"
#include "session/work_folder.h"

namespace tapward::app {

namespace {

constexpr qint64 kMostFileBytes = 64 << 20;
constexpr qint64 kMostFilePixels = 120'000'000;
constexpr int kSide_px = 3000;

QByteArray encoded(const QImage& image, const char* format, int quality)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, format, quality);
    return bytes;
}

}  // namespace

Result<QByteArray> planPictureFrom(const QString& path)
{
    const QFileInfo file(path);
    const std::string name = file.fileName().toStdString();
    if (file.exists() && !file.isFile())  // opening a pipe would wait for who writes to it
        return problem({"{0} is a folder, a pipe or a device, not a file.", {name}}, "Choose a picture file.");
    if (file.size() > kMostFileBytes)
        return problem({"The file {0} is too large for a floor plan.", {name}}, "Save the picture smaller first.");
    QImageReader reader(path);
    reader.setAutoTransform(true);
    const QByteArray format = reader.format();
    if (format != "png" && format != "jpeg")
        return problem({"{0} is neither a PNG nor a JPEG picture.", {name}}, "Save the picture as PNG or JPEG first.");
    const QSize size = reader.size();
    if (!size.isValid() || qint64{size.width()} * size.height() > kMostFilePixels)
        return problem({"The picture {0} is damaged or has too many pixels.", {name}}, "Save it smaller first.");
    if (std::max(size.width(), size.height()) > kSide_px)
        reader.setScaledSize(size.scaled(kSide_px, kSide_px, Qt::KeepAspectRatio).expandedTo(QSize(1, 1)));
    QImage image = reader.read();
    if (image.isNull())
        return problem({"The picture {0} cannot be read: {1}.", {name, reader.errorString().toStdString()}},
                       "Save it again, or choose another one.");
    for (QByteArray bytes = encoded(image, "png", -1);;
         image = image.scaled(image.size() * 0.7, Qt::KeepAspectRatio, Qt::SmoothTransformation)) {
        for (const int quality : {90, 75, 60}) {
            if (document::pictureInfo({bytes.constData(), static_cast<std::size_t>(bytes.size())}))
                return bytes;
            bytes = encoded(image.convertToFormat(QImage::Format_RGB32), "jpeg", quality);
        }
        if (document::pictureInfo({bytes.constData(), static_cast<std::size_t>(bytes.size())}))
            return bytes;
        if (image.width() < 64 || image.height() < 64)
            return problem({"The picture {0} cannot be made small enough.", {name}}, "Choose another one.");
    }
}

FloorPlanBox::FloorPlanBox(Session& session, document::PartId plan, QWidget* parent)
    : QWidget(parent), m_session(session), m_plan(plan), m_state(new QLabel), m_complaint(new QLabel),
      m_scale(new QPushButton(tr("Scale by Two Points\u2026"))),
      m_lengths(new QPushButton(tr("Lengths from the Plan\u2026")))
{
    auto* chooser = new QPushButton(tr("Choose Picture\u2026"));
    m_scale->setToolTip(tr("Click two points on the drawing and type their real distance"));
    m_lengths->setToolTip(
        tr("Proposes lengths for the pipes drawn over the plan; nothing changes until you take them"));
    m_state->setWordWrap(true);
    m_complaint->setWordWrap(true);
    m_complaint->setObjectName(QStringLiteral("complaint"));
    m_complaint->hide();
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    for (QWidget* widget : std::initializer_list<QWidget*>{chooser, m_scale, m_lengths, m_state, m_complaint})
        all->addWidget(widget);
    connect(chooser, &QPushButton::clicked, this, &FloorPlanBox::choose);
    connect(m_scale, &QPushButton::clicked, this, [this] { Q_EMIT scaleRequested(m_plan); });
    connect(m_lengths, &QPushButton::clicked, this, [this] {
        auto* dialog = new TraceDialog(m_session, window());
        dialog->setAttribute(Qt::WA_DeleteOnClose);
        dialog->open();
    });
    refresh();
}

void FloorPlanBox::refresh()
{
    const document::Part* plan = m_session.drawing().find(m_plan);
    const bool picture = plan && !document::values(*plan).text("picture").empty();
    const auto scale = plan ? document::metresPerModule(*plan) : std::nullopt;
    m_scale->setEnabled(picture);
    m_lengths->setEnabled(picture && scale);
    m_state->setText(!picture ? tr("No picture yet. PNG or JPEG; it is kept inside the drawing.")
                     : !scale ? tr("Not scaled yet.")
                              : tr("One grid step is %1.").arg(sayMeasure(*scale, Quantity::Bore, m_session.units())));
}

void FloorPlanBox::choose()
{
    const QString path = QFileDialog::getOpenFileName(this, tr("Picture of the Floor Plan"), workFolder(),
                                                      tr("Pictures (*.png *.jpg *.jpeg)"));
    if (!path.isEmpty())
        takePicture(path);
}

void FloorPlanBox::takePicture(const QString& path)
{
    const auto bytes = planPictureFrom(path);
    if (!bytes) {
        complain(bytes.error());
        return;
    }
    complain(m_session.perform(document::setPlanPicture(m_session.drawing(), m_plan,
                                                        {bytes->constData(), static_cast<std::size_t>(bytes->size())},
                                                        QFileInfo(path).completeBaseName().left(60).toStdString())));
    refresh();
}

void FloorPlanBox::complain(const std::optional<Problem>& problem)
{
    m_complaint->setVisible(problem.has_value());
    m_complaint->setText(problem ? QStringLiteral("\u25B2 %1").arg(sayProblem(*problem, m_session.units()))
                                 : QString());
}

bool askPlanScale(Session& session, document::PartId plan, document::Point a, document::Point b, QWidget* parent)
{
    QDialog dialog(parent);
    dialog.setWindowTitle(FloorPlanBox::tr("Scale the Floor Plan"));
    auto* edit = new ValueEdit(Quantity::Length, session.units());
    auto* label = new QLabel(
        quantityHead(FloorPlanBox::tr("Real length between the two points"), Quantity::Length, session.units()));
    auto* complaint = new QLabel;
    complaint->setWordWrap(true);
    label->setBuddy(edit);
    edit->setAccessibleName(label->text());
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
    buttons->button(QDialogButtonBox::Ok)->setText(FloorPlanBox::tr("Scale"));
    buttons->button(QDialogButtonBox::Cancel)->setText(FloorPlanBox::tr("Cancel"));
    auto* all = new QVBoxLayout(&dialog);
    for (QWidget* widget : std::initializer_list<QWidget*>{label, edit, complaint, buttons})
        all->addWidget(widget);
    const auto say = [&](const QString& text) {
        complaint->setText(text.isEmpty() ? text : QStringLiteral("\u25B2 %1").arg(text));
    };
    const auto scale = [&](double length_m) {
        edit->setValue(length_m);
        const auto refused = session.perform(document::scalePlan(session.drawing(), plan, a, b, length_m));
        if (refused)
            say(sayProblem(*refused, session.units()));
        else
            dialog.accept();
    };
    QObject::connect(edit, &ValueEdit::complaint, &dialog, say);
    QObject::connect(edit, &ValueEdit::committed, &dialog, scale);
    QObject::connect(buttons, &QDialogButtonBox::accepted, &dialog, [&] {
        buttons->setFocus();  // commits what is typed, which scales
        if (edit->value() && !edit->isPending() && dialog.result() != QDialog::Accepted)
            scale(*edit->value());
    });
    QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    edit->setFocus();
    return dialog.exec() == QDialog::Accepted;
}

}  // namespace tapward::app
