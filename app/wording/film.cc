#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> filmWords() {
    static constexpr std::array kWords{
        Words{"film/no-ground",
              "The plan has neither a sheet nor anything drawn: there is no ground to print. Give it a "
              "sheet or draw on it first."},
        Words{
            "film/off-the-sheet",
            "Nothing that the plan draws lies on its sheet {sheet}. Check the sheet, or the grids of what was drawn."},
        Words{"film/too-few-crossings",
              "Only {count} crossings of the {interval} m grid fit in the window, three ticks are needed. Take a sheet "
              "that shows more ground, or a larger window."},
        Words{"film/not-a-crossing",
              "At {easting} {northing} no two lines of the {interval} m grid cross. A tick stands on a crossing that "
              "the sheet prints: name one."},
        Words{"film/tick-outside-window",
              "The crossing {easting} {northing} lies outside the window or too close to its frame. Choose one at "
              "least 7 mm inside, or move the window first."},
        Words{"film/crossing-taken",
              "Another tick stands on the crossing {easting} {northing}. Choose one that is free."},
        Words{"film/too-few-ticks", "{count} crossings hold no film in its place: name three or more."},
        Words{"film/ticks-in-a-row",
              "These ticks lie nearly in a row or close together: a film could turn about them. Spread them toward the "
              "corners of the window."},
        Words{"film/window-too-small",
              "The window must be at least {least} m a side, so that crossings lie in it. Name two corners farther "
              "apart."},
        Words{
            "film/inset-too-large",
            "No scale larger than the film's own, {scale}, brings so much ground onto A4 or A3. Take a smaller part."},
        Words{
            "film/paper-too-small",
            "Film {film} does not fit on {paper}: it needs at least {width_mm} x {height_mm} mm. Name a larger paper, "
            "or a smaller scale."},
        Words{"film/no-such-paper",
              "There is no paper {text}. Say a4, a3, letter, or width and height in mm, as 300x400 (10 to 5000)."},
        Words{"film/no-such-scale", "A scale of 1:{scale} cannot be drawn. Give a number above 0, as 25000."}};
    return kWords;
}

}  // namespace crosstick::app
