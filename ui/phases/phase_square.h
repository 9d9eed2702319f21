#pragma once

#include <QAbstractButton>

#include "ui/look/theme.h"

namespace crosstick::phases {

/// A numbered square: one phase. The chosen one is inked.
class PhaseSquare final : public QAbstractButton {
    Q_OBJECT

  public:
    /// @param number  0: all phases, of a plan without any
    PhaseSquare(int number, const QString& name, const look::Light& light, QWidget* parent);
    [[nodiscard]] int number() const { return number_; }
    [[nodiscard]] const QString& name() const { return name_; }
    void setTimes(const QString& times);  ///< "2130 – 2330", at its right end where there is room
    void setNamed(bool named);            ///< or its number alone
    [[nodiscard]] QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    int number_;
    bool named_ = true;
    QString name_, times_;
    const look::Light& light_;
};

}  // namespace crosstick::phases
