// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/stock_dialog.h"

#include <algorithm>
#include <QCheckBox>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "panels/say.h"
#include "session/session.h"
#include "session/work_folder.h"

namespace tapward::app {

namespace {
enum Column { kName, kKind, kRating, kPrice, kNote, kColumns };
constexpr const char* kFilter = QT_TRANSLATE_NOOP("tapward::app::StockDialog", "Stock list (*.tapstock)");
}  // namespace

StockDialog::StockDialog(Session& session, QWidget* parent)
    : QDialog(parent), m_session(session), m_name(new QLineEdit), m_fitting(new QCheckBox),
      m_table(new QTableWidget(0, kColumns)), m_place(new QLabel), m_complaint(new QLabel),
      m_choose(new QPushButton(tr("&Use for Selected Parts"))), m_keep(new QPushButton(tr("&Keep Selected Part"))),
      m_remove(new QPushButton(tr("&Remove Item")))
{
    setWindowTitle(tr("Stock List"));
    resize(fontMetrics().averageCharWidth() * 110, fontMetrics().height() * 26);
    m_fitting->setText(tr("Only what &fits the selection"));
    m_fitting->setChecked(true);
    m_table->setAccessibleName(tr("Stock items"));
    m_table->setHorizontalHeaderLabels({tr("Name"), tr("Part"), tr("Rating"), tr("Price"), tr("Note")});
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(std::max(24, fontMetrics().height() + 8));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setTabKeyNavigation(false);
    m_table->setAlternatingRowColors(true);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    for (const int column : {kName, kNote})  // words of any length
        m_table->horizontalHeader()->setSectionResizeMode(column, QHeaderView::Stretch);
    m_table->horizontalHeader()->setMinimumSectionSize(fontMetrics().averageCharWidth() * 10);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_name->setAccessibleName(tr("Name of the new item"));
    m_name->setPlaceholderText(tr("Name in the shop"));
    m_name->setMaxLength(200);
    m_complaint->setWordWrap(true);
    m_complaint->setObjectName(QStringLiteral("complaint"));
    m_place->setWordWrap(true);
    m_place->setTextInteractionFlags(Qt::TextSelectableByMouse);

    const auto button = [this](const QString& text, void (StockDialog::*run)()) {
        auto* made = new QPushButton(text);
        made->setAutoDefault(false);
        connect(made, &QPushButton::clicked, this, run);
        return made;
    };
    auto* first = new QHBoxLayout;
    first->addWidget(m_fitting);
    first->addStretch();
    first->addWidget(m_remove);
    first->addWidget(m_choose);
    auto* second = new QHBoxLayout;
    second->addWidget(m_name, 1);
    second->addWidget(m_keep);
    auto* third = new QHBoxLayout;
    third->addWidget(m_place, 1);
    third->addWidget(button(tr("&Other File\u2026"), &StockDialog::askFile));
    third->addWidget(button(tr("&Import\u2026"), &StockDialog::askImport));
    third->addWidget(button(tr("&Export\u2026"), &StockDialog::askExport));
    auto* closing = new QPushButton(tr("Close"));
    connect(closing, &QPushButton::clicked, this, &QDialog::close);
    third->addWidget(closing);
    auto* all = new QVBoxLayout(this);
    all->addLayout(first);
    all->addWidget(m_table, 1);
    all->addLayout(second);
    all->addWidget(m_complaint);
    all->addLayout(third);
    for (auto* one : {m_choose, m_keep, m_remove, closing})
        one->setAutoDefault(false);

    connect(m_fitting, &QCheckBox::toggled, this, &StockDialog::reload);
    connect(m_choose, &QPushButton::clicked, this, &StockDialog::choose);
    connect(m_remove, &QPushButton::clicked, this, &StockDialog::removeItem);
    connect(m_keep, &QPushButton::clicked, this, [this] { keep(m_name->text().trimmed()); });
    connect(m_name, &QLineEdit::textChanged, this, &StockDialog::refreshButtons);
    connect(m_table, &QTableWidget::itemChanged, this, &StockDialog::edited);
    connect(m_table, &QTableWidget::currentItemChanged, this, &StockDialog::refreshButtons);
    connect(&session, &Session::selectionChanged, this, &StockDialog::reload);
    reload();
}

const document::Part* StockDialog::selectedPart() const
{
    const auto ids = m_session.selection();
    return ids.empty() ? nullptr : m_session.drawing().find(ids.front());
}

const document::StockItem* StockDialog::current() const
{
    const int row = m_table->currentRow();
    return row >= 0 && row < static_cast<int>(m_shown.size()) ? &m_list.items[m_shown[static_cast<std::size_t>(row)]]
                                                              : nullptr;
}

void StockDialog::reload()
{
    const auto* before = current();
    const auto kept = before ? std::pair(before->kind, before->name) : std::pair<std::string, std::string>();
    auto list = m_store.load();
    complain(list ? std::nullopt : std::optional(list.error()));
    m_filling = true;
    m_list = list ? std::move(*list) : document::StockList{};
    m_shown.clear();
    const document::Part* part = selectedPart();
    for (std::size_t i = 0; i < m_list.items.size(); ++i)
        if (!m_fitting->isChecked() || !part || m_list.items[i].kind == part->kind)
            m_shown.push_back(i);
    m_table->setRowCount(static_cast<int>(m_shown.size()));
    for (int row = 0; row < m_table->rowCount(); ++row) {
        const auto& item = m_list.items[m_shown[static_cast<std::size_t>(row)]];
        const auto price = item.fields.find("price");
        const QString cells[kColumns] = {
            plain(item.name), say(parts::find(item.kind)->title), plain(item.rating),
            price == item.fields.end()
                ? QString()
                : editableNumber(std::get<double>(price->second), Quantity::Money, m_session.units()),
            plain(item.note)};
        for (int column = 0; column < kColumns; ++column) {
            auto* cell = new QTableWidgetItem(cells[column]);
            cell->setToolTip(cells[column]);  // it may be longer than its column
            if (column == kKind)
                cell->setFlags(cell->flags() & ~Qt::ItemIsEditable);
            if (column == kPrice)
                cell->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            m_table->setItem(row, column, cell);
        }
        if (item.kind == kept.first && item.name == kept.second)
            m_table->setCurrentCell(row, std::max(0, m_table->currentColumn()));
    }
    m_filling = false;
    if (m_table->rowCount() > 0 && m_table->currentRow() < 0)
        m_table->setCurrentCell(0, 0);
    m_place->setText(tr("Kept in %1").arg(QDir::toNativeSeparators(m_store.path())));
    refreshButtons();
}

void StockDialog::refreshButtons()
{
    const auto* item = current();
    const auto* part = selectedPart();
    m_choose->setEnabled(item && part && part->kind == item->kind);
    m_remove->setEnabled(item);
    m_keep->setEnabled(part && m_session.selection().size() == 1 && !m_name->text().trimmed().isEmpty());
    m_keep->setToolTip(part ? tr("Keeps the values of %1 under this name").arg(sayPart(*part))
                            : tr("Select one part in the drawing first"));
}

void StockDialog::complain(const std::optional<Problem>& problem)
{
    m_complaint->setText(problem ? QStringLiteral("\u25B2 %1").arg(sayProblem(*problem, m_session.units()))
                                 : QString());
    m_complaint->setVisible(problem.has_value());
}

bool StockDialog::act(const std::function<std::optional<Problem>(document::StockList&)>& change)
{
    const auto problem = m_store.change(change);
    reload();
    if (problem)
        complain(problem);
    return !problem;
}

void StockDialog::choose()
{
    const auto* item = current();
    if (!item)
        return;
    complain(m_session.perform(document::chooseStock(m_session.drawing(), m_session.selection(), *item)));
}

void StockDialog::keep(const QString& name)
{
    const document::Part* part = selectedPart();
    if (!part)
        return;
    if (act([&](document::StockList& list) {
            auto item = document::stockItem(*part, name.toStdString());
            if (const auto* held = list.find(item.kind, item.name)) {  // its words stay, the values are new
                item.rating = held->rating;
                item.note = held->note;
                item.unknown = held->unknown;
            }
            return document::putStock(list, std::move(item));
        }))
        m_name->clear();
}

void StockDialog::removeItem()
{
    if (const auto* item = current())
        act([gone = *item](document::StockList& list) -> std::optional<Problem> {
            document::removeStock(list, gone.kind, gone.name);
            return std::nullopt;
        });
}

void StockDialog::edited(QTableWidgetItem* cell)
{
    const int row = cell->row();
    if (m_filling || row >= static_cast<int>(m_shown.size()))
        return;
    const document::StockItem before = m_list.items[m_shown[static_cast<std::size_t>(row)]];
    document::StockItem after = before;
    const std::string text = cell->text().trimmed().toStdString();
    if (cell->column() == kName) {
        after.name = text;
    } else if (cell->column() == kRating) {
        after.rating = text;
    } else if (cell->column() == kNote) {
        after.note = text;
    } else if (cell->column() == kPrice) {
        if (text.empty()) {
            after.fields.erase("price");
        } else {
            const auto price = parseMeasure(text, Quantity::Money, m_session.units());
            if (!price) {
                complain(Problem{price.error().what, "Type a number.", {}});
                return;
            }
            after.fields.insert_or_assign("price", parts::Value{*price});
        }
    }
    act([&](document::StockList& list) -> std::optional<Problem> {
        if (after.name != before.name && list.find(after.kind, after.name))
            return Problem{{"Two stock items are called \"{0}\".", {after.name}}, "Give it another name.", {}};
        if (auto why = document::stockFlaw(after))
            return why;
        document::removeStock(list, before.kind, before.name);
        return document::putStock(list, after);
    });
}

void StockDialog::importFrom(const QString& path)
{
    act([&](document::StockList& list) -> std::optional<Problem> {
        const auto other = StockStore::read(path);
        if (!other)
            return other.error();
        document::mergeStock(list, *other);
        return std::nullopt;
    });
}

void StockDialog::exportTo(const QString& path)
{
    const auto list = m_store.load();
    complain(list ? StockStore::write(path, *list) : std::optional(list.error()));
}

void StockDialog::askImport()
{
    const QString path = QFileDialog::getOpenFileName(this, tr("Import Stock Items"), workFolder(), tr(kFilter));
    if (!path.isEmpty())
        importFrom(path);
}

void StockDialog::askExport()
{
    QString path = QFileDialog::getSaveFileName(this, tr("Export Stock List"), workFolder(), tr(kFilter));
    if (!path.isEmpty() && QFileInfo(path).suffix().isEmpty())
        path += QStringLiteral(".tapstock");
    if (!path.isEmpty())
        exportTo(path);
}

void StockDialog::askFile()
{
    QFileDialog dialog(this, tr("Stock List to Use"), QFileInfo(m_store.path()).absolutePath(), tr(kFilter));
    dialog.setFileMode(QFileDialog::AnyFile);
    dialog.setDefaultSuffix(QStringLiteral("tapstock"));
    dialog.setLabelText(QFileDialog::Accept, tr("Use"));
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty())
        return;
    m_store.setPath(dialog.selectedFiles().constFirst());
    reload();
}

}  // namespace tapward::app
