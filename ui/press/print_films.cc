#include <condition_variable>
#include <deque>
#include <future>
#include <mutex>
#include <utility>

#include "ui/press/film_sheet.h"

namespace crosstick::press {
namespace {

/// Films on their way from the thread that composes them to the one that paints them.
class Counter {
  public:
    void put(FilmPage&& page) {
        const std::lock_guard lock(mutex_);
        pages_.push_back(std::move(page));
        changed_.notify_one();
    }
    void close() {
        const std::lock_guard lock(mutex_);
        closed_ = true;
        changed_.notify_one();
    }
    /// Waits for the next; nothing where no more will come.
    std::optional<FilmPage> take() {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [this] { return closed_ || !pages_.empty(); });
        if (pages_.empty()) {
            return std::nullopt;
        }
        FilmPage page = std::move(pages_.front());
        pages_.pop_front();
        return page;
    }

  private:
    std::mutex mutex_;
    std::condition_variable changed_;
    std::deque<FilmPage> pages_;
    bool closed_ = false;
};

}  // namespace

Result<PrintedFilms> printFilms(const FilmsOrder& order, const PdfFacts& facts, const Faces& faces, const Inks& inks) {
    Counter counter;
    auto composed = std::async(std::launch::async, [&] {
        auto notes = composeFilms(order, [&counter](FilmPage&& page) { counter.put(std::move(page)); });
        counter.close();
        return notes;
    });
    PrintedFilms printed;
    PdfPainting painting(faces, inks);
    while (auto page = counter.take()) {
        PdfPage paper{page->page.paper, std::move(page->drawing), page->film->name, page->ground};
        painting.add(paper);
        page->drawing = std::move(paper.drawing);
        printed.set.pages.push_back(std::move(*page));
    }
    auto notes = composed.get();
    if (!notes) {
        return tl::unexpected(notes.error());
    }
    printed.set.notes = std::move(*notes);
    return std::move(painting).finished(facts).map([&printed](std::string&& bytes) {
        printed.pdf = std::move(bytes);
        return std::move(printed);
    });
}

}  // namespace crosstick::press
