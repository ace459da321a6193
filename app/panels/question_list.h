// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QListWidget>
#include <QStackedWidget>
#include <QWidget>

namespace tapward::app {

/// Questions in a list, and beside it the page of the one that is chosen, at full height.
class QuestionList final : public QWidget {
    Q_OBJECT
public:
    explicit QuestionList(QWidget* parent = nullptr);

    int count() const { return m_pages->count(); }
    int indexOf(const QWidget* page) const { return m_pages->indexOf(page); }
    QString title(int at) const { return m_list->item(at)->text(); }
    void insertPage(int at, QWidget* page, const QString& title);
    /// Gives the page back to whoever wants it. @pre 0 <= at < count()
    void removePage(int at);
    /// A mark before the title and what it means in words; none: the title itself.
    void setMark(int at, const QIcon& mark, const QString& words);
    QWidget* currentPage() const { return m_pages->currentWidget(); }
    int currentIndex() const { return m_pages->currentIndex(); }
    void setCurrentIndex(int at) { m_list->setCurrentRow(at); }
    void setCurrentPage(QWidget* page) { setCurrentIndex(indexOf(page)); }
    QListWidget& list() { return *m_list; }

Q_SIGNALS:
    void currentChanged(int at);

protected:
    void changeEvent(QEvent* event) override;

private:
    void fitList();

    QListWidget* m_list;
    QStackedWidget* m_pages;
};

}  // namespace tapward::app
