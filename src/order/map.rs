//! A map and a set, sorted, in one row: std's trees are compiled again for each type that they hold, five kilobytes of
//! WebAssembly each time. Here only a comparison and a move belong to the type; the search is the same for all.
//!
//! What comes in rising order is put at the end. Anything else moves what stands behind it, so they are for thousands of
//! items, not for millions.

use std::borrow::Borrow;
use std::cmp::Ordering;

/// Values by key, in rising order of the keys.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Map<K, V>(Vec<(K, V)>);

impl<K, V> Map<K, V> {
    /// Without anything in it.
    #[must_use]
    pub const fn new() -> Map<K, V> {
        Map(Vec::new())
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// True when there are none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Takes everything out.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// The keys, rising.
    pub fn keys(&self) -> impl DoubleEndedIterator<Item = &K> + ExactSizeIterator + Clone {
        self.0.iter().map(|(key, _)| key)
    }

    /// The values, by rising key.
    pub fn values(&self) -> impl DoubleEndedIterator<Item = &V> + ExactSizeIterator + Clone {
        self.0.iter().map(|(_, value)| value)
    }

    /// The values, by rising key, to be changed.
    pub fn values_mut(&mut self) -> impl DoubleEndedIterator<Item = &mut V> {
        self.0.iter_mut().map(|(_, value)| value)
    }

    /// The values, by rising key, taken out.
    pub fn into_values(self) -> impl DoubleEndedIterator<Item = V> {
        self.0.into_iter().map(|(_, value)| value)
    }

    /// Keys and values, by rising key.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = (&K, &V)> + ExactSizeIterator + Clone {
        self.0.iter().map(|(key, value)| (key, value))
    }

    /// The value of the greatest key.
    #[must_use]
    pub fn last(&self) -> Option<&V> {
        Some(&self.0.last()?.1)
    }

    /// Lets go what `stays` says false of.
    pub fn retain(&mut self, mut stays: impl FnMut(&K, &mut V) -> bool) {
        self.0.retain_mut(|(key, value)| stays(key, value));
    }
}

impl<K: Ord, V> Map<K, V> {
    /// Where a key stands; where it is not there, where it would.
    fn place<Q: Ord + ?Sized>(&self, key: &Q) -> Result<usize, usize>
    where
        K: Borrow<Q>,
    {
        find(self.0.len(), &|at| self.0[at].0.borrow().cmp(key))
    }

    /// The value of a key.
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: Borrow<Q>,
    {
        let at = self.place(key).ok()?;
        Some(&self.0[at].1)
    }

    /// The value of a key, to be changed.
    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: Borrow<Q>,
    {
        let at = self.place(key).ok()?;
        Some(&mut self.0[at].1)
    }

    /// True when the key is there.
    pub fn contains_key<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.place(key).is_ok()
    }

    /// Puts a value in, and gives the one that was there.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.place(&key) {
            Ok(at) => Some(std::mem::replace(&mut self.0[at].1, value)),
            Err(at) => {
                self.0.insert(at, (key, value));
                None
            }
        }
    }

    /// The value of a key, which is made where there is none.
    pub fn or_insert_with(&mut self, key: K, make: impl FnOnce() -> V) -> &mut V {
        let at = match self.place(&key) {
            Ok(at) => at,
            Err(at) => {
                self.0.insert(at, (key, make()));
                at
            }
        };
        &mut self.0[at].1
    }

    /// The value of a key, which is the usual one where there is none.
    pub fn or_default(&mut self, key: K) -> &mut V
    where
        V: Default,
    {
        self.or_insert_with(key, V::default)
    }

    /// Takes a value out.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: Borrow<Q>,
    {
        let at = self.place(key).ok()?;
        Some(self.0.remove(at).1)
    }
}

impl<K, V> Default for Map<K, V> {
    fn default() -> Map<K, V> {
        Map::new()
    }
}

/// Of one key several times the last value stays.
impl<K: Ord, V> FromIterator<(K, V)> for Map<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(items: I) -> Map<K, V> {
        let mut items: Vec<(K, V)> = items.into_iter().collect();
        super::by(&mut items, |a, b| a.0.cmp(&b.0));
        items.dedup_by(|later, first| {
            let same = later.0 == first.0;
            if same {
                std::mem::swap(later, first);
            }
            same
        });
        Map(items)
    }
}

impl<'a, K, V> IntoIterator for &'a Map<K, V> {
    type Item = (&'a K, &'a V);
    type IntoIter = std::iter::Map<std::slice::Iter<'a, (K, V)>, fn(&(K, V)) -> (&K, &V)>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.iter().map(|(key, value)| (key, value))
    }
}

impl<K, V> IntoIterator for Map<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

/// Items, each once, in rising order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Set<K>(Map<K, ()>);

impl<K> Set<K> {
    /// Without anything in it.
    #[must_use]
    pub const fn new() -> Set<K> {
        Set(Map::new())
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// True when there are none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The items, rising.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = &K> + ExactSizeIterator + Clone {
        self.0.keys()
    }
}

impl<K: Ord> Set<K> {
    /// True when the item is there.
    pub fn contains<Q: Ord + ?Sized>(&self, item: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.0.contains_key(item)
    }

    /// Puts an item in; false when it was there.
    pub fn insert(&mut self, item: K) -> bool {
        self.0.insert(item, ()).is_none()
    }
}

impl<K> Default for Set<K> {
    fn default() -> Set<K> {
        Set::new()
    }
}

impl<K: Ord> FromIterator<K> for Set<K> {
    fn from_iter<I: IntoIterator<Item = K>>(items: I) -> Set<K> {
        Set(items.into_iter().map(|item| (item, ())).collect())
    }
}

impl<K: Ord> Extend<K> for Set<K> {
    fn extend<I: IntoIterator<Item = K>>(&mut self, items: I) {
        for item in items {
            self.insert(item);
        }
    }
}

impl<K> IntoIterator for Set<K> {
    type Item = K;
    type IntoIter = std::iter::Map<std::vec::IntoIter<(K, ())>, fn((K, ())) -> K>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter().map(|(item, ())| item)
    }
}

/// Where among `len` sorted items the one stands that `compare` says equal of; where there is none, where it would.
pub(super) fn find(len: usize, compare: &dyn Fn(usize) -> Ordering) -> Result<usize, usize> {
    let (mut from, mut to) = (0, len);
    // What comes in order goes to the end.
    let mut at = len.saturating_sub(1);
    while from < to {
        match compare(at) {
            Ordering::Less => from = at + 1,
            Ordering::Equal => return Ok(at),
            Ordering::Greater => to = at,
        }
        at = usize::midpoint(from, to);
    }
    Err(from)
}
