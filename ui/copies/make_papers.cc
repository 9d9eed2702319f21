// The papers that go with the films: route cards, march tables, execution checklist and matrix.
#include "core/movement/checklist.h"
#include "core/movement/march_table.h"
#include "ui/copies/copies.h"
#include "ui/press/checklist_paper.h"
#include "ui/press/march_paper.h"
#include "ui/press/route_paper.h"

namespace crosstick::copies {
namespace {

class PaperMaker {
  public:
    PaperMaker(const plan::Plan& plan, const CopyWish& wish, const geodesy::MagneticModel* model,
               const sheets::HeightSource* heights, MadeSheets& made)
        : plan_(plan), wish_(wish), model_(model), heights_(heights), made_(made) {}

    void route(const plan::Route& route) {
        const auto figures = movement::routeFigures(plan_, route, model_, heights_);
        if (!figures) {
            made_.notes.push_back(figures.error());
            return;
        }
        wish_.beside.cards == PaperWish::Cards::Table ? cardTable(*figures) : cards(*figures);
        if (route.use == plan::Use::Vehicle) {
            return;  // nobody marches on it
        }
        auto table = movement::marchTable(plan_, *figures, plan_.force().columnNamed(""));
        if (!table) {
            made_.notes.push_back(table.error());
            return;
        }
        if (wants(Paper::March)) {
            marches_.push_back(press::marchPaper(plan_, *figures, *table, {}));
        }
        if (route.use == plan::Use::Primary) {
            tables_.push_back(std::move(*table));
        }
    }

    /// What needs all routes.
    void rest() {
        for (press::PaperTable& march : marches_) {
            add(Paper::March, QString::fromStdString("March table " + march.head.title), std::move(march));
        }
        if (wants(Paper::Checklist)) {
            const auto rows = movement::executionChecklist(plan_, tables_);
            if (rows) {
                add(Paper::Checklist, QStringLiteral("Execution checklist"), press::checklistPaper(plan_, *rows));
            } else {
                made_.notes.push_back(rows.error());
            }
        }
        if (wants(Paper::Matrix)) {
            add(Paper::Matrix, QStringLiteral("Execution matrix"), press::matrixPaper(plan_, tables_));
        }
    }

  private:
    [[nodiscard]] bool wants(Paper paper) const { return wish_.beside.beside.contains(paper); }

    void cards(const movement::RouteFigures& figures) {
        const auto size = wish_.beside.cards == PaperWish::Cards::A6 ? press::CardSize::A6 : press::CardSize::A5;
        auto pages = press::routeCard(plan_, figures, wish_.angles, modelName(), size);
        if (!pages) {
            made_.notes.push_back(pages.error());
            return;
        }
        for (press::CardPage& card : *pages) {
            put(Paper::Card, QString::fromStdString(card.name), film::Paper{card.width, card.height},
                std::move(card.drawing));
        }
    }

    void cardTable(const movement::RouteFigures& figures) {
        const auto paper = movement::paperFigures(plan_, figures, wish_.angles);
        const auto evacuation = movement::evacuationFrom(plan_, figures);
        if (!paper || !evacuation) {
            made_.notes.push_back(paper ? evacuation.error() : paper.error());
            return;
        }
        const auto words = press::cardWords(plan_, figures, *paper, *evacuation, {wish_.angles, modelName()});
        add(Paper::Card, QString::fromStdString(paper->name),
            press::routePaper(plan_, figures, *paper, words, wish_.angles));
    }

    /// A table's pages, with the columns that are wanted; all it can have are told to whoever chooses.
    void add(Paper paper, const QString& name, press::PaperTable table) {
        std::vector<ColumnName>& known = made_.columns[paper];
        known.clear();
        std::vector<std::string> wanted;
        const auto without = wish_.beside.without.find(paper);
        for (const press::PaperColumn& column : table.columns) {
            known.push_back({column.key, column.heads.empty() ? std::string{} : column.heads.front()});
            if (without == wish_.beside.without.end() || !without->second.contains(column.key)) {
                wanted.push_back(column.key);
            }
        }
        auto pages = press::tablePages(press::withColumns(std::move(table), wanted));
        for (std::size_t n = 0; n < pages.size(); ++n) {
            const QString called = pages.size() == 1 ? name : QStringLiteral("%1, page %2").arg(name).arg(n + 1);
            put(paper, called, pages[n].paper, std::move(pages[n].drawing));
        }
    }

    void put(Paper paper, const QString& name, film::Paper size, drawing::Drawing drawing) {
        press::PdfPage page;
        page.paper = size;
        page.drawing = std::move(drawing);
        Sheet sheet{name, std::move(page), false};
        sheet.paper = paper;
        made_.cards.push_back(std::move(sheet));
    }

    [[nodiscard]] std::string modelName() const { return model_ != nullptr ? model_->name() : std::string{}; }

    const plan::Plan& plan_;
    const CopyWish& wish_;
    const geodesy::MagneticModel* model_;
    const sheets::HeightSource* heights_;
    MadeSheets& made_;
    std::vector<press::PaperTable> marches_;
    std::vector<movement::MarchTable> tables_;  ///< of the primary routes
};

}  // namespace

void makePapers(MadeSheets& made, const plan::Plan& plan, const CopyWish& wish, const geodesy::MagneticModel* model,
                const sheets::HeightSource* heights, work::Course& course) {
    PaperMaker maker(plan, wish, model, heights, made);
    int routes = 0;
    for (const plan::RoutePtr& route : plan.routes()) {
        if (course.isStopped()) {
            return;
        }
        course.tell(++routes, static_cast<int>(plan.routes().size()) + 1);
        maker.route(*route);
    }
    maker.rest();
}

}  // namespace crosstick::copies
