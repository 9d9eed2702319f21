#pragma once

#include <optional>
#include <vector>

#include <QToolButton>
#include <QWidget>

#include "ui/look/theme.h"
#include "ui/phases/name_field.h"
#include "ui/work/work.h"

namespace crosstick::phases {

/// Rolled down, the films stand as cards on a board under the head, and the rail is their title.
enum class Roll { Up, Down };

/// The phase rail, rolled up: phases as squares, the films of the chosen one hang under it as tabs. Left and right go
/// from phase to phase, up and down from film to film. Where it has less room it leaves out names of phases, then all
/// films but the working one, then all phases but the chosen one; what does not hang is in the menu of its last button.
class Rail final : public QWidget {
    Q_OBJECT

  public:
    explicit Rail(work::Work& work, QWidget* parent = nullptr);
    void setLight(look::Light light);
    void setRoll(Roll roll);
    /// Makes the parts anew; who had the keyboard keeps it.
    void renew();
    /// The film's name becomes a field where it hangs.
    void askForName(const plan::FilmId& film);
    /// The field that a name is typed in; null where none is.
    [[nodiscard]] NameField* nameField() const { return nameField_; }
    /// The film whose tab has the keyboard.
    [[nodiscard]] std::optional<plan::FilmId> focusedFilm() const { return focus().film; }
    [[nodiscard]] QToolButton* more() const { return more_; }

  Q_SIGNALS:
    void filmMenuWanted(const crosstick::plan::FilmId& film, const QPoint& at);
    void named();  ///< a name was typed, kept or dropped: the keyboard is free again

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    /// Whether a part of the rail has the keyboard, and which: parts come and go, phases and films stay.
    struct Focus {
        std::optional<int> phase;
        std::optional<plan::FilmId> film;
        bool more = false;
        [[nodiscard]] bool isHere() const { return phase || film || more; }
    };
    /// How much of it hangs, from everything to the least.
    enum class Hanging { All, NamedChosen, Numbers, WorkingFilm, ChosenPhase };
    [[nodiscard]] Focus focus() const;
    void giveBack(const Focus& focus);
    void hang();
    void hangFilms();
    void hangTab(const plan::Film& film);
    void hangPart(QWidget* part);
    void fit();
    void hangAs(Hanging hanging);
    [[nodiscard]] int needed() const;
    void fillMore();
    void stepPhase(int by);
    void stepFilm(int by);
    void endNaming();

    work::Work& work_;
    look::Light light_ = look::Light::Day;
    Roll roll_ = Roll::Up;
    std::vector<QWidget*> parts_;
    QToolButton* more_;
    std::optional<plan::FilmId> naming_;
    bool isToFit_ = false;             ///< it was resized since it was fitted
    QPointer<NameField> nameField_;    ///< hangs in the place of that film's tab
    std::optional<Focus> beforeName_;  ///< the part that had the keyboard
    // What the parts were made from, only to be compared: a list of the plan is never changed in place.
    const std::vector<plan::FilmPtr>* films_ = nullptr;
    const std::vector<plan::Phase>* phases_ = nullptr;
};

}  // namespace crosstick::phases
