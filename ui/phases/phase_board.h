#pragma once

#include <map>

#include <QScrollArea>
#include <QTimer>

#include "ui/phases/board_body.h"
#include "ui/phases/board_layout.h"
#include "ui/phases/deeds.h"
#include "ui/phases/film_card.h"
#include "ui/phases/name_field.h"
#include "ui/phases/phase_square.h"
#include "ui/phases/thumbnails.h"
#include "ui/work/work.h"

namespace crosstick::phases {

/// The phase rail, rolled down over the table: phases are columns, films cards that span their phases, the top film on
/// top and the sheet lowest. Left and right go from phase to phase, up and down from film to film; with Alt the film
/// goes up or down in the stack, its last phase one on or back, its first with Shift besides.
class PhaseBoard final : public QWidget {
    Q_OBJECT

  public:
    static constexpr int kHigh = BoardLayout::kHigh;

    PhaseBoard(work::Work& work, const std::filesystem::path& share, QWidget* parent);
    void setLight(look::Light light);
    /// What stands at the right, from the top.
    void setDeeds(std::vector<Deed> deeds);
    void takeKeyboard();  ///< to the card of the working film
    /// The film's name becomes a field on its card.
    void askForName(const plan::FilmId& film);
    [[nodiscard]] NameField* nameField() const { return nameField_; }
    [[nodiscard]] FilmCard* cardOf(const plan::FilmId& film) const;  ///< null where there is none
    [[nodiscard]] const SheetCard& sheet() const { return *sheet_; }
    [[nodiscard]] bool hasPictures() const;  ///< of every film

  Q_SIGNALS:
    void left();  ///< the rail is to be rolled up
    void filmMenuWanted(const crosstick::plan::FilmId& film, const QPoint& at);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    work::Work& work_;
    look::Light light_ = look::Light::Day;
    QScrollArea* scroll_;
    BoardBody* body_;
    SheetCard* sheet_;
    std::vector<PhaseSquare*> heads_;
    std::vector<FilmCard*> cards_;  ///< the lowest first
    std::vector<DeedButton*> deedButtons_;
    std::vector<Deed> deeds_;
    Thumbnails thumbnails_;
    QTimer soon_;  ///< facts and pictures follow a drag at a distance
    QPointer<NameField> nameField_;
    int firstColumn_ = 0;
    std::vector<int> rows_;  ///< of the cards, from the lowest
    const std::vector<plan::FilmPtr>* films_ = nullptr;
    const std::vector<plan::Phase>* phases_ = nullptr;
    /// A card that a hand pulls at, with the columns that it would have.
    struct Pulled {
        plan::FilmId film;
        FilmCard::Grip grip;
        Span span;
        int row = 0;  ///< from the lowest
    };
    std::optional<Pulled> pulled_;

    void renew();
    void renewSoon();
    void makeHeads();
    void makeCards();
    FilmCard* makeCard(const plan::Film& film);
    void tellSheet();
    void orderPictures();

    // Where things stand (board_places.cc).
    [[nodiscard]] BoardLayout layoutNow() const;
    [[nodiscard]] std::vector<int> phaseNumbers() const;
    [[nodiscard]] std::vector<Span> spans() const;
    void place();
    void placeHeads(const BoardLayout& layout);
    void placeCards(const BoardLayout& layout);
    void placeDeeds(const BoardLayout& layout);
    [[nodiscard]] std::vector<QRect> gapsOf(const BoardLayout& layout, const FilmCard& card, const Span& span) const;
    void see(int column);  ///< whole columns are rolled until it is seen

    // What hands and keys do (board_hands.cc).
    void choosePhase(int number);
    void chooseFilm(const plan::FilmId& film);
    [[nodiscard]] bool keyTaken(const QKeyEvent& event);
    [[nodiscard]] bool stepTaken(int key, bool alt, bool shift);
    void stepPhase(int by);
    void stepFilm(int by);
    void stretch(int by, FilmCard::Grip end);
    void restack(const plan::FilmId& film, int row);
    void pull(const plan::FilmId& film, FilmCard::Grip grip, const QPoint& to);
    void letGo();
    void giveUp();
    void giveColumns(const plan::FilmId& film, const Span& before, const Span& span);
    void endNaming();
};

}  // namespace crosstick::phases
