#pragma once

#include <functional>

#include <QLabel>
#include <QScrollArea>

#include "ui/look/choice.h"
#include "ui/look/field.h"
#include "ui/timing/listed_fields.h"
#include "ui/timing/timing_words.h"

class QVBoxLayout;

namespace crosstick::timing {

/// The card at the side on which times and paces are set: the rule and its rates, when the ledger's route starts or has
/// to be in, H-hour, what is done before, and the courses that paces are counted by. Every change is an edit of the
/// plan that ledger, card and papers show at once.
class TimingCard final : public QScrollArea {
    Q_OBJECT

  public:
    static constexpr int kWidth = 252;

    TimingCard(work::Work& work, std::function<QString(const Error&)> say, QWidget* parent = nullptr);
    void setLight(look::Light light);
    void renew();
    /// The caret into the first field of the card.
    void begin();

  Q_SIGNALS:
    void left();  ///< back to the table

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    using Edit = std::function<Result<plan::Plan>(const plan::Plan&, const std::string&)>;
    work::Work& work_;
    std::function<QString(const Error&)> say_;
    QWidget* body_;
    QVBoxLayout* column_;
    std::vector<look::Field*> fields_;
    look::Choice *rule_, *going_, *by_;
    look::Field *rate_, *start_, *hHour_, *count_, *navigator_;
    std::vector<look::Field*> rates_;  ///< as kConditions
    QWidget* fourRates_;
    QLabel *title_, *ruleSource_, *rateSource_, *closes_, *left_, *counts_, *drift_;
    ListedFields *before_, *courses_;
    bool isBackwards_ = false;  ///< the time typed is when the column has to be in
    plan::ItemId shown_;        ///< of which route

    look::Field* field(const QString& name, const QString& example, const char* caption, Edit edit);
    QLabel* note();
    void addRule();
    void addRates();
    void addStart();
    void addBefore();
    void addPaces();
    void addDrift();
    std::optional<QString> commit(Result<plan::Plan> next, const char* caption);
    std::optional<QString> takeStart(const QString& typed);
    void renewStart();
    void renewPaces();
    void renewDrift();
};

}  // namespace crosstick::timing
