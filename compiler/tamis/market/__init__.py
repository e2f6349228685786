"""What must be bought for dishes, and what they cost."""
