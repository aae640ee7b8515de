//! What is not a design file at all.

use crate::says;

#[test]
fn files_that_are_no_design() {
    says(
        "[top]\n",
        "top\n",
        r"
error: this is not TOML: key with no value, expected `=`
 --> top.toml:3:4
  |
3 | top
  |    ^
  |
help: a line is `key = value` or a header such as `[top]` or `[[pipe]]`; a list may go on over more lines until its `]`
",
    );
    says(
        "title = \"Top\"",
        "title = \"Top",
        r#"
error: this is not TOML: invalid basic string, expected `"`
 --> top.toml:1:13
  |
1 | title = "Top
  |             ^
  |
help: a line is `key = value` or a header such as `[top]` or `[[pipe]]`; a list may go on over more lines until its `]`
"#,
    );
    says(
        "[top]\n",
        "tables = [\"a.toml\"]\n[top]\n",
        r#"
error: `tables` is a table, but a list stands here
 --> top.toml:3:10
  |
3 | tables = ["a.toml"]
  |          ^^^^^^^^^^
  |
help: write `tables = { … }` or a header `[tables]`
"#,
    );
    says(
        "[[pipe]]\nname = \"port",
        "[pipe]\nname = \"port",
        r"
error: this is not TOML: duplicate key
  --> top.toml:37:3
   |
37 | [[pipe]]
   |   ^^^^
   |
help: a key stands once in its table; what there may be several of has a header such as `[[pipe]]`, with two pairs of brackets, each time
",
    );
    says(
        "title = \"Top\"",
        "title = Top",
        r#"
error: this is not TOML: invalid boolean, expected `true`
 --> top.toml:1:9
  |
1 | title = Top
  |         ^^^
  |
help: a quantity or a text stands in quotation marks: `title = "Top"`
"#,
    );
    says(
        "title = \"Top\"",
        "title = \"Top\"\ntitle = \"Cover\"",
        r#"
error: this is not TOML: duplicate key
 --> top.toml:2:1
  |
2 | title = "Cover"
  | ^^^^^
  |
help: a key stands once in its table; what there may be several of has a header such as `[[pipe]]`, with two pairs of brackets, each time
"#,
    );
    says(
        "title = \"Top\"",
        "title = 5",
        r"
error: `title` is a text, but a bare number stands here
 --> top.toml:1:9
  |
1 | title = 5
  |         ^
  |
help: put it in quotation marks
",
    );
}
