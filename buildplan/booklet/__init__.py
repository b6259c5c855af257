"""The booklet: pages, editions, words, lists."""
