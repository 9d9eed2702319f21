#pragma once

#include <functional>
#include <map>

#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>

#include "core/measures/catalogue.h"
#include "ui/details/figures_list.h"
#include "ui/details/token_picture.h"
#include "ui/look/theme.h"
#include "ui/press/faces.h"
#include "ui/work/work.h"

class QCheckBox;
class QVBoxLayout;

namespace crosstick::details {

/// The card at the side: the selected measure or route with its fields, or the plan's own where none is selected. Enter
/// goes to the next field, Escape to the table. What is refused stays in force on the table and is said under its
/// field.
class Details final : public QScrollArea {
    Q_OBJECT

  public:
    static constexpr int kWidth = 252;

    /// @param faces  what symbols are lettered in; null where they are missing. Outlives this.
    Details(work::Work& work, std::function<QString(const Error&)> say, const press::Faces* faces,
            QWidget* parent = nullptr);

    void setLight(look::Light light);
    /// The caret into the number or name, all of it chosen: Enter keeps it.
    void askForLabel();
    /// The caret into the first of what is said of the leg that ends on the chosen point.
    void askForLeg();
    [[nodiscard]] QLineEdit* labelField() const { return labelField_; }
    [[nodiscard]] QLineEdit* gridField() const { return gridField_; }
    [[nodiscard]] QString title() const { return title_->text(); }
    [[nodiscard]] const FiguresList* figures() const { return numbers_; }
    /// What it says of where a thing was traced from.
    [[nodiscard]] QString traced() const { return traced_ != nullptr ? traced_->text() : QString(); }
    /// What it says of a thing that lies off the sheet or outside the films' window; empty where it does not.
    [[nodiscard]] QString beyond() const { return beyond_ != nullptr ? beyond_->text() : QString(); }
    /// What it says of an alternate's way: where it leaves its primary route, what is not decided, where it ends.
    [[nodiscard]] QString course() const { return course_ != nullptr ? course_->text() : QString(); }

  Q_SIGNALS:
    void left();  ///< back to the table

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void showEvent(QShowEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    /// Takes a field's text to an edit of the plan, or says why not.
    using Take = std::function<Result<plan::Plan>(const plan::Plan&, const std::string&)>;

    work::Work& work_;
    std::function<QString(const Error&)> say_;
    const press::Faces* faces_;
    look::Light light_ = look::Light::Day;
    QWidget* body_ = nullptr;
    QVBoxLayout* column_ = nullptr;
    QLineEdit* labelField_ = nullptr;
    QLineEdit* caretField_ = nullptr;  ///< where the caret goes first; null: the label
    QLineEdit* gridField_ = nullptr;
    QLineEdit* legField_ = nullptr;  ///< none where no leg ends on what is shown
    QLabel* title_ = nullptr;
    QLabel* beyond_ = nullptr;
    QLabel* course_ = nullptr;  ///< of an alternate: where it leaves, what is still open
    QLabel* traced_ = nullptr;
    std::vector<std::pair<plan::FilmId, QCheckBox*>> filmBoxes_;
    FiguresList* numbers_ = nullptr;
    TokenPicture* token_ = nullptr;
    std::optional<plan::ItemId> shown_;
    bool isRebuilding_ = false;
    bool isStale_ = true;  ///< not built for what is shown now: nobody sees it

    void renew();    ///< builds it anew, or once it is seen
    void catchUp();  ///< with what went on while nobody saw it
    void rebuild();
    void rebuildInPlace();
    void renewValues();
    void renewFields();
    void addHead(const QString& name, const QString& kind, const measures::Entry* entry = nullptr);
    QLineEdit* addField(const QString& label, const std::string& value, const std::string& caption, const Take& take);
    [[nodiscard]] static QLabel* smallLabel(const QString& words, QWidget* parent);
    void addMeasure(const plan::Measure& measure);
    using Held = std::function<plan::MeasurePtr()>;  ///< the measure as the plan has it now; null where it is gone
    void addNames(const plan::Measure& measure, const Held& held);
    void addTie(const plan::Measure& measure, const Held& held);
    void addGrid(const plan::Measure& measure, const Held& held);
    /// What is said of the leg that ends here, on the route in the ledger.
    void addLegNotes(const plan::ItemId& point);
    QLineEdit* addLegField(const QString& label, const char* caption, const plan::ItemId& route,
                           const plan::ItemId& point, std::string plan::LegNotes::*note);
    void addGoing(const plan::ItemId& route, const plan::ItemId& point);
    void addOwnFields(const measures::Entry& entry, const plan::ItemId& id, const Held& held);
    void addRoute(const plan::Route& route);
    void addDecision(const plan::Route& route);
    void renewCourse();
    /// Primary, alternate or a vehicle's; whether the hurt are driven on by it.
    void addUse(const plan::Route& route);
    /// How the hurt are brought out, on the card of a point where they are collected.
    void addEvacuation(const plan::Measure& measure);
    /// A thing that evacuation names, chosen from those that the plan has.
    struct Named {
        QString words;
        plan::ItemId id;
    };
    void addNamed(const QString& label, std::optional<plan::ItemId> plan::Evacuation::*part,
                  const std::vector<Named>& things);
    void addEvacuationBox(const QString& words, std::optional<plan::ItemId> plan::Evacuation::*part,
                          const plan::ItemId& id);
    void addHeading();
    void addHeadingLines();
    void addHeadingTimes();
    void addPicker(QLineEdit* field);
    void addState(const plan::Measure& measure);
    void addWhose(const plan::Measure& measure);
    /// A row of buttons of which one is down.
    struct Choice {
        QString words;
        bool isDown;
        std::function<void(plan::Measure&)> change;
    };
    void addChoices(const plan::ItemId& id, const QString& label, const char* caption,
                    const std::vector<Choice>& choices);
    void addShownOn(const plan::ItemId& item);
    void addFigures(const plan::ItemId& item);
    void addBeyond();
    void renewBeyond();
    void addTraced();
    void renewTraced();
    void renewShownOn();
    [[nodiscard]] QString gridOf(const plan::Measure& measure) const;
    std::string kind_;  ///< of the measure that the card is built for
    std::map<QLineEdit*, std::function<std::string()>> values_;
};

}  // namespace crosstick::details
