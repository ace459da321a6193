// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTranslator>

namespace tapward::app {

/// Makes every text of the program half as long again and puts accents on its letters, as a translation
/// would: what is cut, or was never given to translators, shows. Placeholders, markup, accelerators and
/// file patterns stay. Qt's own texts are left alone.
class PseudoTranslator final : public QTranslator {
    Q_OBJECT
public:
    using QTranslator::QTranslator;
    bool isEmpty() const override { return false; }
    QString translate(const char* context, const char* source, const char* disambiguation = nullptr,
                      int n = -1) const override;
    /// What one text becomes.
    static QString stretched(const QString& source);
};

}  // namespace tapward::app
