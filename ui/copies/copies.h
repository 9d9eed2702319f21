#pragma once

#include <functional>
#include <memory>
#include <vector>

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QSpinBox>
#include <QWidget>

#include "ui/copies/papers.h"
#include "ui/look/theme.h"
#include "ui/press/film_sheet.h"
#include "ui/press/pdf.h"
#include "ui/press/red_light.h"
#include "ui/press/route_card_page.h"
#include "ui/work/work.h"

namespace crosstick::copies {

/// One sheet of paper that will be printed, as the printer's own drawing.
struct Sheet {
    QString name;
    press::PdfPage page;
    bool isFilm = true;
    QStringList lost = {}, faint = {};  ///< what would be so under red light, by name, in colour
    Paper paper = Paper::Card;          ///< what it is where it is no film
};

/// What is to be made: paper, pens, which kinds.
struct CopyWish {
    film::PaperChoice papers = film::usualPapers();
    symbols::PenMode pens = symbols::PenMode::Colour;
    geodesy::AngleUnit angles = geodesy::AngleUnit::Degrees;
    symbols::LegendExtent legend = symbols::LegendExtent::NotStandard;
    PaperWish beside = {};
};

struct MadeSheets {
    std::vector<Sheet> films, cards;                   ///< the second with the papers beside them
    std::map<Paper, std::vector<ColumnName>> columns;  ///< that papers made as tables can have
    std::vector<Error> notes;
    std::optional<Error> fault;
};

/// The papers that go with the films, put at the end of `made`'s cards. Any thread.
void makePapers(MadeSheets& made, const plan::Plan& plan, const CopyWish& wish, const geodesy::MagneticModel* model,
                const sheets::HeightSource* heights, work::Course& course);

/// Films and cards of a plan. Any thread.
[[nodiscard]] MadeSheets makeSheets(const plan::Plan& plan, const CopyWish& wish, const geodesy::MagneticModel* model,
                                    const sheets::HeightSource* heights, work::Course& course);

/// Pages to be put into PDF files, the films' and the cards', as another thread needs them.
struct PdfOrder {
    std::shared_ptr<const MadeSheets> sheets;
    press::PdfFacts facts;
    std::filesystem::path share;
    press::Inks films;  ///< cards are of one pen always
};
enum class Kind { Films, Cards };
/// One of the two; any thread. Nothing of use where the course was stopped. Errors: those of press::PdfPainting and
/// press::Faces.
[[nodiscard]] Result<std::string> pdfOf(const PdfOrder& order, Kind kind, work::Course& course);

/// How the page is looked at: as it prints, by one pen, or under a red lamp.
enum class Seen { InColour, OnePen, UnderRedLight, OnePenUnderRedLight };

/// The page on the desk, at a stated scale, painted by the printer's own painter.
class PageView final : public QWidget {
    Q_OBJECT

  public:
    PageView(const press::Faces* faces, QWidget* parent);
    void show(const Sheet* sheet, look::Light light, Seen seen);
    [[nodiscard]] double scale() const;  ///< 1: true size

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const press::Faces* faces_;
    const Sheet* sheet_ = nullptr;
    look::Light light_ = look::Light::Day;
    Seen seen_ = Seen::InColour;
};

/// Print preview: pages hang above, the page lies on the desk, at the right what is to be made of them.
class Copies final : public QWidget {
    Q_OBJECT

  public:
    Copies(work::Work& work, std::function<QString(const Error&)> say, const press::Faces* faces,
           std::filesystem::path share, QWidget* parent = nullptr);

    void setLight(look::Light light);
    void open();  ///< makes the pages of the present plan
    [[nodiscard]] bool isReady() const { return !isMaking_; }
    /// Calls once the pages are made: now, or when they are.
    void whenReady(std::function<void()> then);
    [[nodiscard]] std::size_t pages() const { return all_.size(); }
    void turn(int pages);
    /// Writes them on another thread; written() or failed() tells what came of it.
    void savePdf(const QString& films, const QString& cards);
    /// As many sets of films and cards as are asked for, one a subordinate.
    void printOn(const QString& queue);
    [[nodiscard]] PapersChoice& papersChoice() { return *papers_; }
    [[nodiscard]] bool isWriting() const { return writings_ > 0; }
    /// What stands on the papers that are shown; its time is not known here.
    [[nodiscard]] plan::Issue papers() const;
    [[nodiscard]] QCheckBox* giveOutBox() const { return giveOut_; }

  Q_SIGNALS:
    void left();
    void written(const QString& words);
    void failed(const QString& words);
    void givenOut(const crosstick::plan::Issue& issue);  ///< what was printed or written goes to those it is for

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    work::Work& work_;
    std::function<QString(const Error&)> say_;
    std::filesystem::path share_;
    look::Light light_ = look::Light::Day;
    std::shared_ptr<const MadeSheets> made_ = std::make_shared<const MadeSheets>();
    std::vector<const Sheet*> all_;
    int at_ = 0;
    bool isMaking_ = false;
    int round_ = 0;
    int writings_ = 0;
    std::vector<std::function<void()>> whenReady_;
    QComboBox *page_, *paper_, *printer_;
    QPushButton *onePen_, *redLight_, *wholeLegend_, *save_, *print_, *back_;
    QCheckBox* giveOut_;
    QSpinBox* sets_;
    QLabel *title_, *seen_, *notes_, *summary_;
    PageView* view_;
    PapersChoice* papers_;

    void fillCard(QWidget* card);
    void listen();
    void listQueues(const QStringList& queues);
    void take(MadeSheets made);
    void showPage();
    void showNotes();
    [[nodiscard]] Seen seen(const Sheet& sheet) const;
    void askAndSave();
    [[nodiscard]] PdfOrder pdfOrder() const;
    /// What comes of it, in words; the second kind where it came to nothing.
    using Told = tl::expected<QString, QString>;
    void write(const QString& words, std::function<Told(work::Course&)> does);
};

}  // namespace crosstick::copies
