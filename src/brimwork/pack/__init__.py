"""The printed documents of a design, made with Typst."""
