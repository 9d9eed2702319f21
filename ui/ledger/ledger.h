#pragma once

#include <functional>

#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <QWidget>

#include "ui/ledger/legs_model.h"
#include "ui/look/theme.h"

namespace crosstick::ledger {

/// The sill with the legs of a route: at the left where the figures come from, then a row a leg, then the sums.
class Ledger final : public QWidget {
    Q_OBJECT

  public:
    static constexpr int kHeight = 132;
    static constexpr int kFolded = 28;

    Ledger(work::Work& work, std::function<QString(const Error&)> say, QWidget* parent = nullptr);

    void setLight(look::Light light);
    void setFolded(bool folded);
    [[nodiscard]] bool isWanted() const;  ///< a route is chosen or being drawn
    void renew();
    void showColumn(LegsModel::Column column, bool shown);
    [[nodiscard]] const LegsModel& legs() const { return model_; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    work::Work& work_;
    std::function<QString(const Error&)> say_;
    LegsModel model_;
    QTableView* table_;
    QWidget* facts_;
    QLabel *title_, *use_, *angle_, *pace_, *rate_;
    QLineEdit* paceField_;
    look::Light light_ = look::Light::Day;

    void renewFacts();
    void takePace();
};

}  // namespace crosstick::ledger
