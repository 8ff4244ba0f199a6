"""The first night and the days after it."""
