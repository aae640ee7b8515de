//! The frame round the sheet: head, style, title, contents.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::{
    report::{said::facts, words::capital},
    top::Top,
};

const STYLE: &str = include_str!("style.css");

/// A page with contents, each part by its id and title.
pub(super) fn page(top: &Top, contents: &[(&str, &str)], body: &Markup) -> Markup {
    html! {
        (DOCTYPE)
        html lang="en" xmlns="http://www.w3.org/1999/xhtml" {
            head {
                // Written out, since elements without an end are closed in XML only.
                (PreEscaped(r#"<meta charset="utf-8"/><meta name="viewport" content="width=device-width, initial-scale=1"/>"#))
                title { (top.title) " – calculation sheet" }
                style { (PreEscaped(STYLE)) }
            }
            body {
                header {
                    p class="kind" { "Calculation sheet" }
                    h1 { (top.title) }
                    p class="facts" { (capital(&facts(top))) "." }
                }
                nav aria-label="Contents" {
                    ol { @for (id, name) in contents { li { a href={ "#" (id) } { (name) } } } }
                }
                main { (body) }
                footer {
                    p {
                        "Made by skinspan " (env!("CARGO_PKG_VERSION")) " from one design file. Every number can be redone from part 8, "
                        "with the values of part 10."
                    }
                }
            }
        }
    }
}
