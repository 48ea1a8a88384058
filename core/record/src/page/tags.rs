//! The structure of the content, for readers that cannot see the page.

use krilla::tagging::{Identifier, Node as Leaf, Tag, TagGroup, TagKind, TagTree, TextDecorationType};

/// One element of the structure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Node(usize);

struct Element {
    /// None only for the root.
    tag: Option<TagKind>,
    children: Vec<Child>,
}

enum Child {
    Element(usize),
    Content(Identifier),
    Struck(Identifier),
}

/// The elements in reading order, and the content painted for each.
pub(super) struct Tags(Vec<Element>);

impl Tags {
    /// The element that holds all others.
    pub const ROOT: Node = Node(0);

    pub fn new() -> Self {
        Self(vec![Element { tag: None, children: Vec::new() }])
    }

    /// Adds an element as the last child of another.
    pub fn add(&mut self, parent: Node, tag: impl Into<TagKind>) -> Node {
        let node = self.0.len();
        self.0.push(Element { tag: Some(tag.into()), children: Vec::new() });
        self.child(parent, Child::Element(node));
        Node(node)
    }

    /// Says that a piece of a page belongs to an element.
    pub fn content(&mut self, node: Node, piece: Identifier, struck: bool) {
        self.child(node, if struck { Child::Struck(piece) } else { Child::Content(piece) });
    }

    fn child(&mut self, node: Node, child: Child) {
        if let Some(element) = self.0.get_mut(node.0) {
            element.children.push(child);
        }
    }

    /// The whole structure.
    pub fn tree(&self, language: &str) -> TagTree {
        let mut tree = TagTree::new().with_lang(Some(language.to_owned()));
        for leaf in self.leaves(Self::ROOT.0) {
            tree.push(leaf);
        }
        tree
    }

    fn leaves(&self, at: usize) -> Vec<Leaf> {
        let children = self.0.get(at).map(|element| element.children.iter()).into_iter().flatten();
        children
            .filter_map(|child| match child {
                Child::Content(piece) => Some(Leaf::from(*piece)),
                Child::Struck(piece) => {
                    let tag = Tag::Span.with_text_decoration_type(Some(TextDecorationType::LineThrough));
                    Some(TagGroup::with_children(tag, vec![Leaf::from(*piece)]).into())
                }
                Child::Element(at) => {
                    let tag = self.0.get(*at)?.tag.clone()?;
                    Some(TagGroup::with_children(tag, self.leaves(*at)).into())
                }
            })
            .collect()
    }
}
